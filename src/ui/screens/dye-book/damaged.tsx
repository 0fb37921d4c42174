// What can't be read is said, and the rest is read on.
import type { Entry } from '../../../core/pot/entry.ts'
import type { PotEvent } from '../../../core/pot/events.ts'
import type { Programme } from '../../../core/protocol/model.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { eventWords } from '../../../core/record/event-words.ts'
import { localIso } from '../../../core/record/local-time.ts'
import { Strip } from '../../parts/strip.tsx'

type Broken = { index: number; why: string }

export function Damaged({ damaged }: { damaged: readonly Broken[] }): preact.JSX.Element | null {
  if (damaged.length === 0) return null
  return (
    <div class="book-damaged">
      <Strip tone="warn">
        {`${damaged.length === 1 ? 'One entry is' : `${damaged.length} entries are`} damaged. The rest reads on; the record takes no more entries.`}
      </Strip>
      <ul>
        {damaged.map(({ index, why }) => (
          <li key={`${index} ${why}`}>{`Entry ${index + 1}: ${why}.`}</li>
        ))}
      </ul>
    </div>
  )
}

type UnreadableProps = { entries: readonly Entry<PotEvent>[]; damaged: readonly Broken[]; units: Units }

/** A journal without its start: nothing to hang a record on, but every line that reads is shown. */
export function Unreadable({ entries, damaged, units }: UnreadableProps): preact.JSX.Element {
  if (entries.length === 0 && damaged.length === 0) return <p>There is no such record.</p>
  return (
    <>
      <Strip tone="bad">The start of this record can’t be read. Below is what can.</Strip>
      <Damaged damaged={damaged} />
      <ul class="book-said">
        {entries.map((entry) => (
          <li key={`${entry.writerId} ${entry.seq}`}>
            <span class="book-when">{localIso(entry.atMs, entry.tzOffsetMin).slice(0, 16).replace('T', ' ')}</span>
            <span>{eventWords(entry.event, noProgramme, units)}</span>
          </li>
        ))}
      </ul>
    </>
  )
}

const none = { leastMs: 0, likelyMs: 0, mostMs: 0 }
const noProgramme: Programme = {
  title: '',
  steps: [],
  gaps: [],
  setOut: [],
  estimate: { clock: none, hands: none },
  late: 'shift',
  goodsMassG: 0,
  liquorML: null,
  liquorRatio: null,
  roomC: 20,
  coolingPerMin: 0,
  inputs: [],
  cautions: []
}
