// "?rehearse=60" runs the same app on a clock sixty times as fast, with a journal, settings and an owner of its own.
// A real pot never sees it.
export type Rehearsal = { speed: number; anchorMs: number; fresh: boolean }

const KEY = 'strandline-rehearsal'
const SPEED_MOST = 3_600
/** A rehearsal left alone for so long is over: the next one begins empty. */
const OVER_MS = 12 * 3_600_000

/** Null: this is no rehearsal. `fresh`: what an earlier rehearsal left is to be cleared. */
export function rehearsalOf(
  search: string,
  kept: () => Pick<Storage, 'getItem' | 'setItem'>,
  nowMs: number
): Rehearsal | null {
  const asked = new URLSearchParams(search).get('rehearse')
  if (asked === null) return null
  const number = asked === '' ? 1 : Number(asked)
  const speed = Number.isFinite(number) && number > 0 ? Math.min(number, SPEED_MOST) : 1
  const [lastSpeed, anchorMs] = (kept().getItem(KEY) ?? '').split(' ').map(Number)
  const goesOn = lastSpeed === speed && anchorMs !== undefined && nowMs >= anchorMs && nowMs - anchorMs < OVER_MS
  if (goesOn) return { speed, anchorMs, fresh: false }
  kept().setItem(KEY, `${speed} ${nowMs}`)
  return { speed, anchorMs: nowMs, fresh: true }
}
