// What a record says when more than one device had a hand in it.
import { useEffect, useState } from 'preact/hooks'
import type { Units } from '../../../core/quantity/index.ts'
import type { Branch } from '../../../core/record/branches.ts'
import { eventWords } from '../../../core/record/event-words.ts'
import { localIso } from '../../../core/record/local-time.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import type { AsideLine } from '../../backup.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { onward } from '../../parts/onward.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { useBackup } from '../../parts/use-backup.ts'

/** The line of the Dye book says so: the journal alone can't tell where a pot stands. */
export function useElsewhere(kitchen: Kitchen, potId: string, record: BatchRecord | null, live: boolean): boolean {
  const [elsewhere, setElsewhere] = useState(false)
  const startedAtMs = record?.identity.startedAtMs ?? null
  useEffect(() => {
    let here = true
    setElsewhere(false)
    if (startedAtMs === null || live) return
    kitchen.book(startedAtMs, startedAtMs + 1).then(
      (lines) => here && setElsewhere(lines.some((line) => line.potId === potId && line.elsewhere === true)),
      () => {}
    )
    return () => {
      here = false
    }
  }, [kitchen, potId, startedAtMs, live])
  return elsewhere
}

/** Nothing rings by itself: the dyer says whether the pot stands here now. */
export function Elsewhere({ kitchen, potId }: { kitchen: Kitchen; potId: string }): preact.JSX.Element | null {
  const [left, setLeft] = useState(false)
  const [failed, setFailed] = useState<string | null>(null)
  if (left) return <p>Left as it was. It can be carried on here as long as it is open.</p>
  const carryOn = async (): Promise<void> => {
    const go = onward(kitchen)
    const text = 'Carried on on this device. The backup was made while it ran on another one.'
    const sent = await kitchen.send(potId, { type: 'WriteNote', text })
    if (sent.ok) go(`#/stove/${encodeURIComponent(potId)}`)
    else setFailed(sent.say)
  }
  return (
    <Strip
      tone="warn"
      actions={
        <>
          <Pad kind="lesser" onPress={() => void carryOn()}>
            Carry on here
          </Pad>
          <Pad kind="lesser" onPress={() => setLeft(true)}>
            Leave it
          </Pad>
        </>
      }
    >
      {failed ?? 'Nothing of it calls here. Carried on here and there, the record will show both branches.'}
    </Strip>
  )
}

type BranchesProps = { branches: readonly Branch[]; shown: number; show: (no: number) => void }

/** Both ways are true: each device wrote down what was done by it. */
export function Branches({ branches, shown, show }: BranchesProps): preact.JSX.Element | null {
  if (branches.length < 2) return null
  const from = branches.find(({ own }) => own !== null)?.own
  const since = from ? ` from ${localIso(from.atMs, from.tzOffsetMin).slice(11, 16)} on` : ''
  return (
    <div class="book-branches">
      <Strip tone="warn">
        {`This batch was continued on ${branches.length} devices${since}: what was done there is not one course but ${branches.length}. Each is shown for itself, from the start to its end.`}
      </Strip>
      <ChoiceRow
        legend="Show"
        choices={branches.map((_, no) => ({ value: no, label: no === 0 ? 'Carried on first' : `Branch ${no + 1}` }))}
        value={shown}
        onChoose={show}
      />
      {shown === 0 ? null : (
        <p>
          Notes and corrections are written in the branch that was carried on first. “Same again” starts from there too.
        </p>
      )}
    </div>
  )
}

type AsideProps = { kitchen: Kitchen; potId: string; record: BatchRecord; units: Units }

/** Entries that came from another device under a number that is taken here. */
export function SetAside({ kitchen, potId, record, units }: AsideProps): preact.JSX.Element | null {
  const backup = useBackup(kitchen)
  const [lines, setLines] = useState<AsideLine[]>([])
  useEffect(() => {
    let here = true
    backup?.aside(potId).then(
      (found) => here && setLines(found),
      () => {}
    )
    return () => {
      here = false
    }
  }, [backup, potId])
  if (lines.length === 0) return null
  const conflicts = lines.filter(({ why }) => why === 'conflict').length
  return (
    <div class="book-damaged">
      {conflicts > 0 ? (
        <Strip tone="warn">
          {`${conflicts === 1 ? 'One entry' : `${conflicts} entries`} of another device came under a number that is taken here. What stood here stands; below is the other.`}
        </Strip>
      ) : (
        <p>Damaged entries were mended from a backup. The damaged ones are kept aside:</p>
      )}
      <ul>
        {lines.map((line) => (
          <li key={`${line.writerId} ${line.seq} ${JSON.stringify(line.entry)}`}>
            {`Entry ${line.seq}, ${line.why === 'conflict' ? 'the other one' : 'damaged'}: ${wordsOf(line, record, units)}`}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** A damaged entry may hold anything: what has no words is shown as it is. */
function wordsOf({ entry }: AsideLine, { programme }: BatchRecord, units: Units): string {
  const { event } = entry as { event?: unknown }
  try {
    return eventWords(event as Parameters<typeof eventWords>[0], programme, units)
  } catch {
    return JSON.stringify(event ?? entry).slice(0, 200)
  }
}
