// Finds a batch: by the code on its tag, scanned, pasted or typed, or by what it was called.
import { useState } from 'preact/hooks'
import { readCode } from '../../../core/record/batch-code.ts'
import type { BookLine, Kitchen } from '../../kitchen.ts'
import { TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import { recordRoute } from './routes.ts'

type Props = { kitchen: Kitchen; found: readonly BookLine[] | null; show: (found: BookLine[] | null) => void }

/** `show` gets what was found by name, or null for the whole book again. A code leads to its batch at once. */
export function Find({ kitchen, found, show }: Props): preact.JSX.Element {
  const [text, setText] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const type = (next: string): void => {
    setText(next)
    setProblem(null)
    if (next.trim() === '') show(null)
    // A scanner or a paste needs no further press; while a code is typed by hand its beginning leads nowhere yet.
    else void openBatch(next)
  }
  const open = async (said: string): Promise<void> => {
    const code = readCode(said)
    if (code.kind === 'other') return setProblem(`That is the code of a ${code.what}, not of a batch.`)
    if (code.kind === 'none') return byName(said)
    if (!(await openBatch(said))) setProblem('No batch with this code is on this device.')
  }
  const openBatch = async (said: string): Promise<boolean> => {
    const code = readCode(said)
    if (code.kind !== 'batch') return false
    const { entries, damaged } = await kitchen.entries(code.potId)
    const there = entries.length + damaged.length > 0
    if (there) kitchen.go(recordRoute(code.potId))
    return there
  }
  const byName = async (said: string): Promise<void> => {
    const words = said.trim().toLowerCase()
    if (words === '') return show(null)
    const all = await kitchen.book(0, Number.MAX_SAFE_INTEGER)
    const matching = all.filter((line) =>
      [line.colourway, line.batchName, line.protocolTitle].some((name) => name.toLowerCase().includes(words))
    )
    show(matching)
    if (matching.length === 0) setProblem('Nothing of that name is in the book.')
  }
  return (
    <form
      class="book-find"
      onSubmit={(event) => {
        event.preventDefault()
        void open(text)
      }}
    >
      <TextField
        label="Find a batch"
        hint="Its name, or the code on its tag."
        value={text}
        onInput={type}
        problem={problem}
      />
      <Pad onPress={() => void open(text)}>Find</Pad>
      {found === null ? null : <Pad onPress={() => type('')}>Show all</Pad>}
    </form>
  )
}
