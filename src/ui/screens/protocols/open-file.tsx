// Opening a protocol from disk. It is text from anywhere: read, never run, and shown as text only.
import { useState } from 'preact/hooks'
import type { Problem } from '../../../core/protocol/model.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'

type Props = { kitchen: Kitchen; opened: (stored: StoredProtocol) => void }

/** More problems than this are counted, not listed: nobody reads on. */
const LISTED_MOST = 100

export function OpenFile({ kitchen, opened }: Props): preact.JSX.Element {
  const [refused, setRefused] = useState<{ name: string; problems: Problem[] } | null>(null)
  const [reading, setReading] = useState(false)
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setRefused(null)
    setReading(true)
    const read = await kitchen.openProtocolFile(file)
    setReading(false)
    if (read.ok) opened(read.stored)
    else setRefused({ name: file.name, problems: read.problems })
  }
  return (
    <section class="protocols-open">
      <label class="protocols-file">
        <span>Open a protocol from a file</span>
        <input
          type="file"
          accept=".yaml,.yml,.json,.txt,text/yaml,application/json"
          onChange={(event) => {
            const input = event.currentTarget
            // Emptied, so that the same file can be chosen again once it is mended.
            open(input.files?.[0]).finally(() => {
              input.value = ''
            })
          }}
        />
      </label>
      <p class="soft">A text file in the protocol language: YAML or JSON.</p>
      {reading ? <p role="status">Reading the file.</p> : null}
      {refused ? <Problems {...refused} /> : null}
    </section>
  )
}

function Problems({ name, problems }: { name: string; problems: Problem[] }): preact.JSX.Element {
  const listed = problems.slice(0, LISTED_MOST)
  return (
    <div class="protocols-problems" role="alert">
      <h2>{`${name} can’t be run: ${problems.length === 1 ? 'one problem' : `${problems.length} problems`}`}</h2>
      <ol>
        {listed.map((problem) => (
          <li key={`${problem.line}:${problem.column} ${problem.code} ${problem.where}`}>
            <strong>{`Line ${problem.line}, column ${problem.column}: ${problem.what}`}</strong>
            <span>{problem.instead}</span>
          </li>
        ))}
      </ol>
      {problems.length > listed.length ? <p>{`And ${problems.length - listed.length} more.`}</p> : null}
    </div>
  )
}
