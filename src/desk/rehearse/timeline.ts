// One rehearsed pot, printed: its timeline in words, or the journal that it would have left.
import { alarmBudget, SOUNDS_AN_HOUR_MOST } from '../../core/pot/alarm-budget.ts'
import { ENTRY_VERSION } from '../../core/pot/entry.ts'
import { sealEntry } from '../../core/pot/write-entry.ts'
import type { Programme } from '../../core/protocol/model.ts'
import { stepAt } from '../../core/protocol/tree.ts'
import type { Rehearsal } from '../../session/rehearsal.ts'
import type { Told } from '../../session/rehearsed-pot.ts'
import { describeEvent } from '../describe-event.ts'
import { START_MS } from './given.ts'

export function printTimeline(programme: Programme, done: Rehearsal): void {
  const { roomC, coolingPerMin } = programme
  console.log(`${programme.title}: rehearsed with ${programme.goodsMassG} g of goods`)
  console.log(
    `Heating at the stated rates; cooling by Newton's law, k = ${coolingPerMin} a minute, room ${roomC} °C.\n`
  )
  for (const { atMs, event } of done.told) {
    const said = describeEvent(event, (path) => stepAt(programme, path))
    if (said) console.log(`${clock(atMs - START_MS)}  ${said}`)
  }
  if (done.endedAfterMs !== null) console.log(`\nAll steps done after ${clock(done.endedAfterMs)} (h:mm:ss).`)
  const { sounds, mostAnHour } = alarmBudget(done.told)
  console.log(`Sounds: ${sounds} in all, at most ${mostAnHour} in an hour.`)
  if (mostAnHour > SOUNDS_AN_HOUR_MOST) {
    console.log(`More than ${SOUNDS_AN_HOUR_MOST} sounds in an hour are no longer heard: make fewer or longer waits.`)
  }
}

/** "1:05:30" */
export function clock(ms: number): string {
  const s = Math.round(ms / 1000)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${Math.floor(s / 3600)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`
}

export function printJournal(told: Told[]): void {
  for (const [i, { atMs, commandId, by, event }] of told.entries()) {
    const after = i === 0 ? null : { writerId: 'rehearsal', seq: i }
    const entry = sealEntry({
      v: ENTRY_VERSION,
      streamId: 'pot/rehearsal',
      writerId: 'rehearsal',
      seq: i + 1,
      after,
      commandId,
      atMs,
      recordedAtMs: atMs,
      bootId: 'rehearsal',
      monoMs: atMs - START_MS,
      tzOffsetMin: 0,
      by,
      event
    })
    console.log(JSON.stringify(entry))
  }
}
