// Wet hands: a drop is a tap, a running drop is a drag. While it is wet only what is pressed and held counts; keys and
// pedals stay as they are, because water does not press them.
import { eatRelease, HOLD_MS, isDead, severalFingers } from './guard.ts'

/** A finger that goes further than this is a drag, or a drop on its way down. */
const SLOP_PX = 16
const pressable = 'button, a[href], summary, input[type="checkbox"], input[type="radio"]'

type Hold = { on: HTMLElement; pointerId: number; x: number; y: number; stoodFor: string | null; end: () => void }

/** Takes pointer clicks away from the page and gives a held one back. Returns the way to stop. */
export function watchWet(page: Document): () => void {
  let hold: Hold | null = null
  const stop = (): void => {
    hold?.end()
    hold = null
  }
  const begin = (event: PointerEvent): void => {
    stop()
    const on = pressedAt(event)
    if (on === null || severalFingers() || isDead(on, performance.now())) return
    const timer = setTimeout(() => {
      const held = hold
      stop()
      // What lay under the finger when it came down is what it meant.
      if (!held || severalFingers() || !on.isConnected || standsFor(on) !== held.stoodFor) return
      // The pad may lead away from here, to where taps count.
      eatRelease(page)
      on.click()
    }, HOLD_MS)
    const end = (): void => {
      clearTimeout(timer)
      on.removeAttribute('data-held')
    }
    on.setAttribute('data-held', '')
    hold = { on, pointerId: event.pointerId, x: event.clientX, y: event.clientY, stoodFor: standsFor(on), end }
  }
  const move = (event: PointerEvent): void => {
    if (hold?.pointerId !== event.pointerId) return
    if (Math.hypot(event.clientX - hold.x, event.clientY - hold.y) > SLOP_PX) stop()
  }
  // A click without a finger (`detail` 0) is a key's, a pedal's, or the one given back above.
  const click = (event: MouseEvent): void => {
    if (event.detail === 0 || isText(event.target)) return
    event.preventDefault()
    event.stopImmediatePropagation()
  }
  const menu = (event: Event): void => event.preventDefault()
  const capture = { capture: true }
  const heard = {
    pointerdown: begin,
    pointermove: move,
    pointerup: stop,
    pointercancel: stop,
    click,
    contextmenu: menu
  }
  for (const [type, hear] of Object.entries(heard)) page.addEventListener(type, hear as EventListener, capture)
  page.documentElement.setAttribute('data-wet', '')
  return () => {
    stop()
    for (const [type, hear] of Object.entries(heard)) page.removeEventListener(type, hear as EventListener, capture)
    page.documentElement.removeAttribute('data-wet')
  }
}

/** What the finger came down on, where it can be pressed. A pad that is held at all times keeps its own count. */
function pressedAt({ target }: Event): HTMLElement | null {
  const on = target instanceof Element ? target.closest<HTMLElement>(pressable) : null
  return on === null || on.matches('.pad-hold, :disabled') ? null : on
}

function standsFor(on: HTMLElement): string | null {
  return on.dataset.standsFor ?? null
}

function isText(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('textarea, input:not([type="checkbox"], [type="radio"])') !== null
}
