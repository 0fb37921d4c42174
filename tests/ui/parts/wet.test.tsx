// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { render as plainRender } from 'preact'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { forgetTaps, watchFingers } from '../../../src/ui/parts/guard.ts'
import { HoldPad } from '../../../src/ui/parts/hold-pad.tsx'
import { Pad } from '../../../src/ui/parts/pad.tsx'
import { watchWet } from '../../../src/ui/parts/wet-guard.ts'

let stops: (() => void)[]
beforeEach(() => {
  vi.useFakeTimers()
  forgetTaps()
  stops = [watchFingers(document), watchWet(document)]
})
afterEach(() => {
  for (const stop of stops) stop()
  cleanup()
  vi.useRealTimers()
})

const pass = (ms: number): void => {
  vi.advanceTimersByTime(ms)
}
const touch = (node: Element, kind: string, x = 0, id = 1): boolean =>
  fireEvent(node, new PointerEvent(kind, { bubbles: true, pointerType: 'touch', pointerId: id, clientX: x }))
/** As a finger's tap ends: the browser says which click in a row it was. */
const clicked = (node: Element): boolean =>
  fireEvent(node, new MouseEvent('click', { bubbles: true, detail: 1, cancelable: true }))
const tap = (node: Element): void => {
  touch(node, 'pointerdown')
  pass(60)
  touch(node, 'pointerup')
  clicked(node)
}

const aPad = (layoutKey = 'Moss'): { pressed: ReturnType<typeof vi.fn>; pad: HTMLElement } => {
  const pressed = vi.fn()
  render(<One layoutKey={layoutKey} pressed={pressed} />)
  pass(800)
  return { pressed, pad: screen.getByText('In') }
}
const One = ({ layoutKey, pressed }: { layoutKey: string; pressed: () => void }): preact.JSX.Element => (
  <Pad kind="main" layoutKey={layoutKey} onPress={pressed}>
    In
  </Pad>
)

describe('while hands are wet', () => {
  it('a tap presses no pad', () => {
    const { pressed, pad } = aPad()
    tap(pad)
    pass(2_000)
    expect(pressed).not.toHaveBeenCalled()
  })

  it('a hold of 0.7 s presses it, once, and shows how long it takes', () => {
    const { pressed, pad } = aPad()
    touch(pad, 'pointerdown')
    expect(pad.hasAttribute('data-held')).toBe(true)
    pass(690)
    expect(pressed).not.toHaveBeenCalled()
    pass(20)
    expect(pressed).toHaveBeenCalledTimes(1)
    expect(pad.hasAttribute('data-held')).toBe(false)
    pass(2_000)
    touch(pad, 'pointerup')
    clicked(pad)
    expect(pressed).toHaveBeenCalledTimes(1)
  })

  it.each([
    ['a finger lifted', (pad: Element) => touch(pad, 'pointerup')],
    ['a cancelled touch', (pad: Element) => touch(pad, 'pointercancel')],
    ['a drag', (pad: Element) => touch(pad, 'pointermove', 30)],
    ['a second finger', () => touch(document.body, 'pointerdown', 0, 2)]
  ])('%s before that ends the hold', (_what, change) => {
    const { pressed, pad } = aPad()
    touch(pad, 'pointerdown')
    pass(600)
    change(pad)
    pass(1_000)
    expect(pressed).not.toHaveBeenCalled()
    expect(pad.hasAttribute('data-held')).toBe(false)
  })

  it('a finger that shakes a little still holds', () => {
    const { pressed, pad } = aPad()
    touch(pad, 'pointerdown')
    touch(pad, 'pointermove', 6)
    pass(710)
    expect(pressed).toHaveBeenCalledTimes(1)
  })

  it('a pad that came to mean something else under the finger is not pressed', () => {
    const pressed = vi.fn()
    const { container } = render(
      <button type="button" data-stands-for="Moss" onClick={pressed}>
        In
      </button>
    )
    const pad = container.firstElementChild as HTMLElement
    touch(pad, 'pointerdown')
    pass(100)
    pad.dataset.standsFor = 'Plum'
    pass(700)
    expect(pressed).not.toHaveBeenCalled()
    touch(pad, 'pointerup')
    touch(pad, 'pointerdown')
    pass(710)
    expect(pressed).toHaveBeenCalledTimes(1)
  })

  it('a hold that began while the pad was dead does not count, however long it lasts', () => {
    const pressed = vi.fn()
    render(<One layoutKey="Moss" pressed={pressed} />)
    const pad = screen.getByText('In')
    pass(100)
    touch(pad, 'pointerdown')
    pass(3_000)
    touch(pad, 'pointerup')
    expect(pressed).not.toHaveBeenCalled()
    touch(pad, 'pointerdown')
    pass(710)
    expect(pressed).toHaveBeenCalledTimes(1)
  })

  it('links and switches want the hold as well', () => {
    const followed = vi.fn((event: Event) => event.preventDefault())
    render(<a href="#/settings">Settings</a>)
    const link = screen.getByText('Settings')
    link.addEventListener('click', followed)
    tap(link)
    expect(followed).not.toHaveBeenCalled()
    touch(link, 'pointerdown')
    pass(710)
    expect(followed).toHaveBeenCalledTimes(1)
  })

  it('a key presses a pad as always', () => {
    const { pressed, pad } = aPad()
    fireEvent.click(pad)
    expect(pressed).toHaveBeenCalledTimes(1)
  })

  it('what is held at all times keeps its own count', () => {
    const held = vi.fn()
    render(<HoldPad onHeld={held}>End it</HoldPad>)
    touch(screen.getByText('End it'), 'pointerdown')
    pass(710)
    expect(held).toHaveBeenCalledTimes(1)
  })

  it('ends with wet mode: then a tap counts again', () => {
    const { pressed, pad } = aPad()
    for (const stop of stops.splice(1)) stop()
    tap(pad)
    expect(pressed).toHaveBeenCalledTimes(1)
    expect(document.documentElement.hasAttribute('data-wet')).toBe(false)
  })
})

describe('a finger that is lifted after a hold', () => {
  it('presses nothing that has come under it meanwhile, also where wet mode has ended', () => {
    const pressed = vi.fn()
    const held = vi.fn(() => {
      for (const stop of stops.splice(1)) stop()
    })
    render(
      <>
        <HoldPad onHeld={held}>End it</HoldPad>
        <One layoutKey="under" pressed={pressed} />
      </>
    )
    pass(800)
    touch(screen.getByText('End it'), 'pointerdown')
    pass(3_000)
    expect(held).toHaveBeenCalledTimes(1)
    const under = screen.getByText('In')
    touch(under, 'pointerup')
    clicked(under)
    expect(pressed).not.toHaveBeenCalled()
    tap(under)
    expect(pressed).toHaveBeenCalledTimes(1)
  })
})

describe('a pad that has just come up', () => {
  it('that wants a hold is dead for its beginning too', () => {
    const held = vi.fn()
    render(
      <HoldPad layoutKey="fates" onHeld={held}>
        End it
      </HoldPad>
    )
    const pad = screen.getByText('End it')
    pass(600)
    touch(pad, 'pointerdown')
    pass(2_000)
    expect(held).not.toHaveBeenCalled()
    touch(pad, 'pointerup')
    touch(pad, 'pointerdown')
    pass(710)
    expect(held).toHaveBeenCalledTimes(1)
  })

  it('is dead before the browser has painted it', () => {
    const [pressed, place] = [vi.fn(), document.body.appendChild(document.createElement('div'))]
    for (const stop of stops.splice(1)) stop()
    plainRender(<One layoutKey="Moss" pressed={pressed} />, place)
    fireEvent.click(screen.getByText('In'))
    expect(pressed).not.toHaveBeenCalled()
    plainRender(null, place)
    place.remove()
  })
})
