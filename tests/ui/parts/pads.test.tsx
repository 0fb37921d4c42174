// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { forgetTaps, watchFingers } from '../../../src/ui/parts/guard.ts'
import { HoldPad } from '../../../src/ui/parts/hold-pad.tsx'
import { Pad } from '../../../src/ui/parts/pad.tsx'

let stop: () => void
beforeEach(() => {
  vi.useFakeTimers()
  forgetTaps()
  stop = watchFingers(document)
})
afterEach(() => {
  stop()
  cleanup()
  vi.useRealTimers()
})

const pass = (ms: number): void => {
  vi.advanceTimersByTime(ms)
}
const touch = (node: Element, kind: 'pointerdown' | 'pointerup' | 'pointercancel'): boolean =>
  fireEvent(node, new PointerEvent(kind, { bubbles: true, pointerType: 'touch' }))

describe('a pad', () => {
  it('is dead for 0.7 s after what it stands for changed', () => {
    const pressed = vi.fn()
    const { rerender } = render(
      <Pad kind="main" layoutKey="Moss" onPress={pressed}>
        In
      </Pad>
    )
    pass(699)
    fireEvent.click(screen.getByText('In'))
    expect(pressed).toHaveBeenCalledTimes(0)
    pass(2)
    fireEvent.click(screen.getByText('In'))
    expect(pressed).toHaveBeenCalledTimes(1)
    rerender(
      <Pad kind="main" layoutKey="Plum" onPress={pressed}>
        In
      </Pad>
    )
    pass(500)
    fireEvent.click(screen.getByText('In'))
    expect(pressed).toHaveBeenCalledTimes(1)
    pass(500)
    fireEvent.click(screen.getByText('In'))
    expect(pressed).toHaveBeenCalledTimes(2)
  })

  it('takes a burst of taps for one, also over two pads', () => {
    const [one, other] = [vi.fn(), vi.fn()]
    render(
      <>
        <Pad kind="main" onPress={one}>
          One
        </Pad>
        <Pad kind="lesser" onPress={other}>
          Other
        </Pad>
      </>
    )
    fireEvent.click(screen.getByText('One'))
    pass(100)
    fireEvent.click(screen.getByText('Other'))
    pass(100)
    fireEvent.click(screen.getByText('One'))
    expect([one.mock.calls.length, other.mock.calls.length]).toEqual([1, 0])
    pass(251)
    fireEvent.click(screen.getByText('Other'))
    expect(other).toHaveBeenCalledTimes(1)
  })

  it('is not pressed by two fingers or a splash, and is again by one', () => {
    const pressed = vi.fn()
    render(
      <Pad kind="main" onPress={pressed}>
        In
      </Pad>
    )
    const pad = screen.getByText('In')
    touch(pad, 'pointerdown')
    touch(document.body, 'pointerdown')
    touch(pad, 'pointerup')
    fireEvent.click(pad)
    expect(pressed).toHaveBeenCalledTimes(0)
    touch(document.body, 'pointercancel')
    pass(300)
    touch(pad, 'pointerdown')
    touch(pad, 'pointerup')
    fireEvent.click(pad)
    expect(pressed).toHaveBeenCalledTimes(1)
  })

  it('takes a key held down for one press', () => {
    render(<Pad onPress={() => {}}>In</Pad>)
    const kept = fireEvent.keyDown(screen.getByText('In'), { key: 'Enter' })
    const repeated = fireEvent.keyDown(screen.getByText('In'), { key: 'Enter', repeat: true })
    expect([kept, repeated]).toEqual([true, false])
  })
})

describe('press and hold', () => {
  const hold = (): { held: ReturnType<typeof vi.fn>; pad: Element } => {
    const held = vi.fn()
    render(<HoldPad onHeld={held}>End it</HoldPad>)
    return { held, pad: screen.getByText('End it') }
  }

  it('does its deed after 0.7 s, once', () => {
    const { held, pad } = hold()
    touch(pad, 'pointerdown')
    pass(690)
    expect(held).toHaveBeenCalledTimes(0)
    pass(20)
    expect(held).toHaveBeenCalledTimes(1)
    pass(2000)
    expect(held).toHaveBeenCalledTimes(1)
  })

  it.each(['pointerup', 'pointercancel'] as const)('is undone by %s before that', (kind) => {
    const { held, pad } = hold()
    touch(pad, 'pointerdown')
    pass(600)
    touch(pad, kind)
    pass(600)
    expect(held).toHaveBeenCalledTimes(0)
  })

  it('is undone by a second finger', () => {
    const { held, pad } = hold()
    touch(pad, 'pointerdown')
    pass(300)
    touch(document.body, 'pointerdown')
    pass(600)
    expect(held).toHaveBeenCalledTimes(0)
  })

  it('is done by a key held down as well', () => {
    const { held, pad } = hold()
    fireEvent.keyDown(pad, { key: ' ' })
    pass(300)
    fireEvent.keyDown(pad, { key: ' ', repeat: true })
    pass(410)
    expect(held).toHaveBeenCalledTimes(1)
  })

  it('is not done by a tap or by a click without a touch', () => {
    const { held, pad } = hold()
    fireEvent.click(pad)
    pass(1000)
    expect(held).toHaveBeenCalledTimes(0)
  })
})
