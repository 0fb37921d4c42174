// Wet gloves and drips: what a pad must not take for a knuckle. The facts are the browser's, kept in one place for the
// whole page, because a burst of drops lands on several pads at once.

/** A pad is dead this long after the layout under it changed: a knuckle already on its way meant what stood there. */
export const DEAD_MS = 700
/** Taps nearer together than this are one hand, or water. */
export const BURST_MS = 250
/** How long a finger must lie on what can't be undone. */
export const HOLD_MS = 700

const bornMs = new WeakMap<Element, number>()

/** What a pad stands for has just changed. */
export function markChanged(pad: Element, nowMs: number): void {
  bornMs.set(pad, nowMs)
}

/** Asked when a tap ends and when a hold begins: a finger that came down on a dead pad meant what stood there before,
 * however long it stays. */
export function isDead(pad: Element, nowMs: number): boolean {
  return nowMs - (bornMs.get(pad) ?? Number.NEGATIVE_INFINITY) < DEAD_MS
}

/** The click by which a finger is lifted after a hold is the hold's, whatever lies under the finger by then. */
export function eatRelease(page: Document): void {
  const end = (): void => {
    page.removeEventListener('click', eat, true)
    page.removeEventListener('pointerdown', end, true)
  }
  const eat = (event: Event): void => {
    // A key's click, or one that the app gives, is no release.
    if ((event as MouseEvent).detail === 0) return
    event.preventDefault()
    event.stopImmediatePropagation()
    end()
  }
  page.addEventListener('click', eat, true)
  page.addEventListener('pointerdown', end, true)
}

let lastTapMs = Number.NEGATIVE_INFINITY
let fingers = 0
let several = false

/** True where a tap at `nowMs` (page time) may count; remembers it then. */
export function takeTap(nowMs: number): boolean {
  if (several) return false
  if (nowMs - lastTapMs < BURST_MS) return false
  lastTapMs = nowMs
  return true
}

export function severalFingers(): boolean {
  return several
}

/** For tests: as if nothing had been touched yet. */
export function forgetTaps(): void {
  lastTapMs = Number.NEGATIVE_INFINITY
  fingers = 0
  several = false
}

/** Counts the fingers on the glass; returns the way to stop. */
export function watchFingers(on: EventTarget): () => void {
  const down = (event: Event): void => {
    if ((event as PointerEvent).pointerType === 'mouse') return
    fingers += 1
    if (fingers > 1) several = true
  }
  const up = (event: Event): void => {
    if ((event as PointerEvent).pointerType === 'mouse') return
    fingers = Math.max(0, fingers - 1)
    // The click follows pointerup: the mark must outlive it.
    if (fingers === 0 && several) setTimeout(() => (several = fingers > 0), 50)
  }
  on.addEventListener('pointerdown', down, true)
  on.addEventListener('pointerup', up, true)
  on.addEventListener('pointercancel', up, true)
  return () => {
    on.removeEventListener('pointerdown', down, true)
    on.removeEventListener('pointerup', up, true)
    on.removeEventListener('pointercancel', up, true)
  }
}
