// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { render } from '@testing-library/preact'
import { act } from 'preact/test-utils'
import { describe, expect, it } from 'vitest'
import { useSettled } from '../../../src/ui/parts/settled.ts'

const setUp = () => {
  const clock = signal(0)
  let drawn = 0
  const Lamp = ({ after }: { after: number | null }): preact.JSX.Element => {
    drawn++
    // Without a time it reads no clock at all.
    const lit = useSettled(() => after !== null && clock.value >= after)
    return <p>{lit ? 'lit' : 'dark'}</p>
  }
  const { container, rerender } = render(<Lamp after={null} />)
  return {
    says: () => container.textContent,
    drawn: () => drawn,
    tick: (to: number) =>
      act(() => {
        clock.value = to
      }),
    give: (after: number | null) => rerender(<Lamp after={after} />)
  }
}

describe('a settled value', () => {
  it('draws anew only when it says something new', async () => {
    const lamp = setUp()
    lamp.give(3)
    const before = lamp.drawn()
    await lamp.tick(1)
    await lamp.tick(2)
    expect(lamp.drawn()).toBe(before)
    await lamp.tick(3)
    expect([lamp.says(), lamp.drawn()]).toEqual(['lit', before + 1])
    await lamp.tick(4)
    expect(lamp.drawn()).toBe(before + 1)
  })

  it('is of what it is given now, and of the signals that this makes it read', async () => {
    const lamp = setUp()
    await lamp.tick(5)
    expect(lamp.says()).toBe('dark')
    lamp.give(4)
    expect(lamp.says()).toBe('lit')
    lamp.give(8)
    expect(lamp.says()).toBe('dark')
    await lamp.tick(8)
    expect(lamp.says()).toBe('lit')
  })
})
