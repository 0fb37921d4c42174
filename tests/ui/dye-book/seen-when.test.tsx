// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import DyeBookScreen from '../../../src/ui/screens/dye-book/index.tsx'
import { readSeenAt, typedFrom } from '../../../src/ui/screens/dye-book/seen-at.ts'
import { T0 } from '../../core/pot/given.ts'
import { mossFinished } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const MIN = 60_000
const nowMs = T0 + 20 * 60 * MIN

describe('a time typed for what was seen', () => {
  const read = (typed: string) => readSeenAt(typed, T0, nowMs)
  const say = (typed: string): string => {
    const seen = read(typed)
    return seen.ok ? `taken for ${typedFrom(seen.atMs)}` : seen.say
  }

  it('is by the clock of the device, to the minute, and reads back as it was written', () => {
    for (const atMs of [T0, T0 + 7 * MIN, nowMs]) expect(read(typedFrom(atMs))).toEqual({ ok: true, atMs })
    expect(read(typedFrom(T0 + MIN).replace('T', ' '))).toEqual({ ok: true, atMs: T0 + MIN })
    expect(typedFrom(new Date(2031, 0, 2, 3, 4, 59).getTime())).toBe('2031-01-02T03:04')
  })

  it('that is still to come is refused, with what time it is', () => {
    expect(read(typedFrom(nowMs + MIN))).toMatchObject({ ok: false })
    expect(say(typedFrom(nowMs + MIN))).toMatch(/^That is still to come\. It is today, \d+:\d\d\.$/)
  })

  it('before the batch began is refused, but not the minute in which it did', () => {
    expect(say(typedFrom(T0 - MIN))).toMatch(/^The batch began later: (Today|Yesterday|[A-Z]\w+day .*), \d+:\d\d\.$/)
    expect(readSeenAt(typedFrom(T0), T0 + 40_000, nowMs)).toEqual({ ok: true, atMs: T0 + 40_000 })
  })

  it('that is none says what would be one', () => {
    const none = 'Give the day and the time, for example 2031-06-14 10:32.'
    expect([say(''), say('yesterday'), say('2031-06-14')]).toEqual([none, none, none])
    const never = 'There is no such day or time.'
    expect([say('2031-02-30T10:00'), say('2031-13-01T10:00'), say('2031-06-14T24:30')]).toEqual([never, never, never])
    expect(say('2031-06-14T09:60')).toBe(never)
  })
})

function open(): TestKitchen {
  const bench = mossFinished()
  const kitchen = aKitchen({ journals: [{ potId: 'pot-a', entries: bench.entries }], nowMs })
  kitchen.signals.route.value = '#/dye-book/pot-a'
  render(<DyeBookScreen kitchen={kitchen} />)
  return kitchen
}

beforeEach(() => {
  forgetTaps()
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
})
afterEach(cleanup)

const sheet = () => within(screen.getByRole('dialog'))
const write = (): void => {
  forgetTaps()
  fireEvent.click(sheet().getByText('Write it down'))
}

describe('“When was it seen?”', () => {
  it('takes any time, for a result: one to come is refused at its field and nothing typed is lost', async () => {
    const kitchen = open()
    fireEvent.click(await screen.findByText('Write a result'))
    fireEvent.change(sheet().getByLabelText('What'), { target: { value: 'ph' } })
    fireEvent.input(sheet().getByLabelText('Final pH'), { target: { value: '5.2' } })
    expect(sheet().queryByLabelText('Day and time')).toBeNull()
    fireEvent.click(sheet().getByText('Another time'))
    const field = sheet().getByLabelText('Day and time') as HTMLInputElement
    expect([field.type, field.value]).toEqual(['datetime-local', typedFrom(nowMs)])
    fireEvent.input(field, { target: { value: typedFrom(nowMs + 60 * MIN) } })
    write()
    expect((await sheet().findByRole('alert')).textContent).toContain('That is still to come.')
    expect(kitchen.sent).toEqual([])
    expect(field.value).toBe(typedFrom(nowMs + 60 * MIN))
    expect((sheet().getByLabelText('Final pH') as HTMLInputElement).value).toBe('5.2')
    fireEvent.input(field, { target: { value: typedFrom(nowMs - 13 * 60 * MIN) } })
    expect(sheet().queryByRole('alert')).toBeNull()
    write()
    await waitFor(() => expect(kitchen.sent).toHaveLength(1))
    expect(kitchen.sent[0]).toMatchObject({ agoMs: 13 * 60 * MIN, command: { type: 'TellResult' } })
  })

  it('takes any time for a note too, and goes back to a quick choice', async () => {
    const kitchen = open()
    fireEvent.click(await screen.findByText('Note'))
    fireEvent.input(sheet().getByLabelText('What you saw'), { target: { value: 'Greener when dry.' } })
    fireEvent.click(sheet().getByText('Another time'))
    fireEvent.input(sheet().getByLabelText('Day and time'), { target: { value: '' } })
    write()
    expect((await sheet().findByRole('alert')).textContent).toContain('Give the day and the time')
    expect(kitchen.sent).toEqual([])
    forgetTaps()
    fireEvent.click(sheet().getByText('An hour ago'))
    expect(sheet().queryByLabelText('Day and time')).toBeNull()
    write()
    await waitFor(() => expect(kitchen.sent).toHaveLength(1))
    expect(kitchen.sent[0]).toMatchObject({ agoMs: 60 * MIN, command: { type: 'WriteNote' } })
  })
})
