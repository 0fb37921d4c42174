// The calendar file of the coming alerts: made when a dyer asks for it, each with a higher sequence than the one before.
import type { CalendarPot, CalendarWanted, Published } from '../core/calendar/calendar-of.ts'
import { localIso } from '../core/record/local-time.ts'
import type { ClockPort } from '../session/ports.ts'
import type { Kept } from '../shell/settings/kept.ts'
import type { Kitchen, Sent, Settings } from '../ui/kitchen.ts'

const KEY = 'calendar'

type KeptCalendar = { sequence: number; published: Published[] }

type Parts = {
  kept: Kept
  clock: Pick<ClockPort, 'nowMs' | 'tzOffsetMin'>
  pots: () => readonly CalendarPot[]
  settings: () => Settings
  saveFile: Kitchen['saveFile']
  rehearsal: boolean
}

export type CalendarFiles = { saveCalendar(): Promise<Sent>; cancelCalendar(): Promise<Sent> }

/** The sequence and what was published are kept beside the settings, and stored before the file is handed over: a number
 * that no file came of is no harm, a number given twice would make a calendar keep the older file. */
export function calendarFiles(parts: Parts): CalendarFiles {
  let before: Promise<unknown> = Promise.resolve()
  // One after the other: two files made at once would get the same number.
  const inTurn = (work: () => Promise<Sent>): Promise<Sent> => {
    const sent = before.then(work).catch((): Sent => failed)
    before = sent
    return sent
  }
  return {
    saveCalendar: () => inTurn(() => make(parts, false)),
    cancelCalendar: () => inTurn(() => make(parts, true))
  }
}

const failed: Sent = {
  ok: false,
  refusal: null,
  say: 'No calendar file: its number could not be stored, and a file with an old number would not count.'
}

async function make(parts: Parts, cancel: boolean): Promise<Sent> {
  const { kept, clock, pots, settings, saveFile, rehearsal } = parts
  const { calendarOf } = await import('../core/calendar/calendar-of.ts')
  const last = await kept.get<KeptCalendar>(KEY)
  const wanted: Omit<CalendarWanted, 'sequence'> = {
    pots: cancel ? [] : pots(),
    nowMs: clock.nowMs(),
    before: last?.published ?? [],
    cancel,
    units: settings(),
    tzOffsetMin: clock.tzOffsetMin,
    rehearsal
  }
  const sequence = (last?.sequence ?? -1) + 1
  const file = calendarOf({ ...wanted, sequence })
  if (cancel && wanted.before.length === 0) return nothing('No calendar file was saved that is still to be cancelled.')
  if (!cancel && file.count === 0) return nothing('No alert is to come, so there is nothing for a calendar.')
  await kept.set(KEY, { sequence, published: file.published } satisfies KeptCalendar)
  saveFile(nameOf(wanted), 'text/calendar', file.text)
  return { ok: true }
}

/** "strandline-2031-06-14-1132.ics": a later file does not hide an earlier one. */
function nameOf({ nowMs, tzOffsetMin, cancel }: Omit<CalendarWanted, 'sequence'>): string {
  const at = localIso(nowMs, tzOffsetMin(nowMs)).slice(0, 16).replace('T', '-').replace(':', '')
  return `strandline-${cancel ? 'cancel-' : ''}${at}.ics`
}

function nothing(say: string): Sent {
  return { ok: false, refusal: null, say }
}
