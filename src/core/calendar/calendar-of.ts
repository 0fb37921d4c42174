// The coming alerts as an iCalendar file (RFC 5545, published as RFC 5546 says): what still rings when the page is dead.
import { alertsDue } from '../pot/alerts-due.ts'
import type { Expectations } from '../pot/expected/expectation.ts'
import type { LiveState, PotState } from '../pot/state.ts'
import { stepAt } from '../protocol/tree.ts'
import type { Units } from '../quantity/units.ts'
import { localClock, localDay } from '../record/local-time.ts'
import { type Coming, comingOf } from './coming.ts'
import { contentLine, durationValue, textValue, uidPart, utcStamp } from './content-line.ts'

const PRODID = '-//Strandline//Coming alerts//EN'
/** RFC 5546, 3.2.1: a published event has an organizer. Nobody can be written to: ".invalid" never exists (RFC 2606). */
const ORGANIZER = 'ORGANIZER;CN=Strandline:mailto:nobody@strandline.invalid'
/** An event so long past troubles no calendar any more. */
const FORGOTTEN_MS = 2 * 24 * 3_600_000

export type CalendarPot = { potId: string; state: PotState; expected?: Expectations }

/** What an earlier file put into somebody's calendar. */
export type Published = { uid: string; startMs: number; forMs: number; summary: string }

export type CalendarFile = {
  text: string
  /** What stands in calendars once this file is taken in: to be kept, and given as `before` to the next file. */
  published: Published[]
  /** How many coming alerts are in it. */
  count: number
}

export type CalendarWanted = {
  pots: readonly CalendarPot[]
  nowMs: number
  /** Higher than in every earlier file: a calendar keeps the event with the highest. An integer from 0 up. */
  sequence: number
  before: readonly Published[]
  /** A file that takes all of it out again. */
  cancel: boolean
  units: Units
  /** Minutes east of UTC at that time. */
  tzOffsetMin: (atMs: number) => number
  /** Marks every event: times of a rehearsal are not those of a real pot. */
  rehearsal: boolean
}

/** The coming alerts of the live pots as one file. Each says that it is a snapshot and when it was made. An event keeps
 * its UID through all files: pot, step path (with its round) or limit. What an earlier file held and is no longer to come
 * (a step done early, skipped, in a loop that ended) is in the new file as cancelled, so that it does not ring.
 * See `comingOf` for what is in it and for times nobody knows yet. */
export function calendarOf(wanted: CalendarWanted): CalendarFile {
  const { cancel, before, nowMs } = wanted
  const coming = wanted.pots.flatMap((pot) => eventsOf(wanted, pot))
  const now = new Set(coming.map(({ published }) => published.uid))
  const older = before.filter(({ uid, startMs }) => !now.has(uid) && startMs > nowMs - FORGOTTEN_MS)
  const published = coming.map((event) => event.published)
  const lines = cancel
    ? [...older, ...published].flatMap((event) => cancelled(wanted, event))
    : [...coming.flatMap(({ lines }) => lines), ...stale(wanted, older)]
  const head = ['BEGIN:VCALENDAR', 'VERSION:2.0', `PRODID:${PRODID}`, 'CALSCALE:GREGORIAN']
  const all = [...head, `METHOD:${cancel ? 'CANCEL' : 'PUBLISH'}`, ...lines, 'END:VCALENDAR']
  // A file that was saved may never have been taken in: what it cancels stays known.
  return {
    text: all.map(contentLine).join(''),
    published: cancel ? [] : [...published, ...older],
    count: cancel ? 0 : published.length
  }
}

function stale(wanted: CalendarWanted, older: readonly Published[]): string[] {
  return older.filter(({ startMs }) => startMs > wanted.nowMs).flatMap((event) => cancelled(wanted, event))
}

function eventsOf(wanted: CalendarWanted, pot: CalendarPot): { published: Published; lines: string[] }[] {
  const { state } = pot
  if (state.status !== 'running' && state.status !== 'held') return []
  const caveats = caveatsOf(wanted, state)
  return comingOf(state, wanted.nowMs, wanted.units, pot.expected).map((coming) => {
    const uid = `strandline-${uidPart(pot.potId)}-${uidPart(coming.key)}`
    const name = state.pot.colourway || state.pot.letter
    const what = `${wanted.rehearsal ? 'Rehearsal, ' : ''}${name}: ${coming.what}${coming.about ? ' (about)' : ''}`
    const published = { uid, startMs: coming.startMs, forMs: coming.forMs, summary: what }
    const say = [...coming.say, ...rangeSay(wanted, coming), ...caveats]
    return { published, lines: eventLines(wanted, published, coming, say) }
  })
}

/** "Between 10:05 and 10:40", or "Not before 10:05". */
function rangeSay({ tzOffsetMin }: CalendarWanted, { range }: Coming): string[] {
  if (range === null) return []
  const clock = (atMs: number): string => localClock(atMs, tzOffsetMin(atMs))
  const { leastMs, mostMs } = range
  return [mostMs === null ? `Not before ${clock(leastMs)}` : `Between ${clock(leastMs)} and ${clock(mostMs)}`]
}

/** What every event of a pot has to say about itself. */
function caveatsOf({ nowMs, tzOffsetMin, rehearsal }: CalendarWanted, state: LiveState): string[] {
  const offset = tzOffsetMin(nowMs)
  const clock = localClock(nowMs, offset)
  const standing = alertsDue(state, nowMs).find(({ kind }) => kind === 'call')?.path
  const first = standing ? stepAt(state.programme, standing)?.knot : undefined
  const stopped = state.status === 'held' || state.trouble !== null
  return [
    ...(rehearsal ? ['A rehearsal: these times are not those of a real pot'] : []),
    ...(stopped ? ['The pot was stopped when this was made: its times will have moved'] : []),
    ...(first ? [`Counted as if “${first}” had been done at ${clock}`] : []),
    `A snapshot made on ${localDay(nowMs, offset)} at ${clock}: it knows nothing of what happened at the stove since`
  ]
}

function eventLines(wanted: CalendarWanted, event: Published, coming: Coming, say: string[]): string[] {
  const summary = textValue(event.summary)
  const alarms = coming.ringsBeforeMs.flatMap((beforeMs) => [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${summary}`,
    `TRIGGER:${durationValue(-beforeMs)}`,
    'END:VALARM'
  ])
  const description = textValue(say.map((line) => `${line}.`).join('\n'))
  return component(wanted, event, coming.about ? 'TENTATIVE' : 'CONFIRMED', [`DESCRIPTION:${description}`, ...alarms])
}

function cancelled(wanted: CalendarWanted, event: Published): string[] {
  return component(wanted, event, 'CANCELLED', [])
}

function component(
  { nowMs, sequence }: CalendarWanted,
  event: Published,
  status: 'CONFIRMED' | 'TENTATIVE' | 'CANCELLED',
  more: string[]
): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${textValue(event.uid)}`,
    `DTSTAMP:${utcStamp(nowMs)}`,
    `DTSTART:${utcStamp(event.startMs)}`,
    `DURATION:${durationValue(event.forMs)}`,
    `SEQUENCE:${sequence}`,
    `STATUS:${status}`,
    // A pot on the stove does not make its dyer "busy" for others.
    'TRANSP:TRANSPARENT',
    ORGANIZER,
    `SUMMARY:${textValue(event.summary)}`,
    ...more,
    'END:VEVENT'
  ]
}
