// The leaves that redraw each second. Nothing above them reads the clock.
import type { Kitchen } from '../../kitchen.ts'
import { FitText } from '../../parts/fit-text.tsx'
import type { Time } from './bath-view.ts'
import { giantSay, lateSay, lengthSay } from './words.ts'

type Props = { kitchen: Kitchen }

/** The giant time of a bath. */
export function GiantTime({ kitchen, time, mostPx }: Props & { time: Time; mostPx: number }): preact.JSX.Element {
  const { say, tail } = giant(time, kitchen.now.value)
  return (
    <div class="giant" role="timer" aria-live="off">
      <FitText
        text={say}
        shape={say.replace(/\d/g, '0')}
        mostPx={mostPx}
        leastPx={30}
        tag="div"
        tail={tail}
        className="giant-fit"
      />
    </div>
  )
}

function giant(time: Time, nowMs: number): { say: string; tail: string | null } {
  switch (time.kind) {
    case 'to': {
      const leftMs = time.atMs - nowMs
      // A time that nobody's clock closes is a guess: no seconds on it.
      if (time.about && leftMs >= 60_000) return { say: lengthSay(Math.max(leftMs, 120_000)), tail: 'about' }
      if (leftMs > -1000) return { say: giantSay(Math.max(0, leftMs)), tail: null }
      return { say: giantSay(leftMs), tail: 'late' }
    }
    case 'since':
      return { say: giantSay(Math.max(0, nowMs - time.atMs)), tail: 'so far' }
    case 'stands':
      return { say: giantSay(time.leftMs), tail: 'stands still' }
    case 'words':
      return { say: time.say, tail: null }
  }
}

/** "7 min" to a moment, or "0:12 late". */
export function Left({ kitchen, atMs }: Props & { atMs: number }): preact.JSX.Element {
  const leftMs = atMs - kitchen.now.value
  return <span class="number">{leftMs <= 0 ? lateSay(-leftMs) : lengthSay(leftMs)}</span>
}

/** How long the skein has been out of the bath, with its limit. */
export function OutOfBath({
  kitchen,
  sinceMs,
  limitAtMs
}: Props & { sinceMs: number; limitAtMs: number | null }): preact.JSX.Element {
  const nowMs = kitchen.now.value
  const over = limitAtMs !== null && nowMs >= limitAtMs
  const most = limitAtMs === null ? '' : ` of ${giantSay(limitAtMs - sinceMs)}`
  const say = `Out of the bath ${giantSay(Math.max(0, nowMs - sinceMs))}${most}`
  return (
    <p class="out-of-bath number" data-over={over ? '' : undefined}>
      {over ? `${say}. Back in` : say}
    </p>
  )
}
