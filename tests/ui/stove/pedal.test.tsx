// @vitest-environment happy-dom
import { fireEvent, screen, within } from '@testing-library/preact'
import { describe, expect, it } from 'vitest'
import { type FixtureKitchen, noon } from './fixtures.ts'
import { atTheStove, call, key, keyHeld, open, pass, sent, settle, sheet, tap, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

const viaOf = (kitchen: FixtureKitchen): string[] =>
  kitchen.sent.filter(({ command }) => command.type !== 'ShowCaution').map(({ via }) => via)

const chosen = (): string => text(document.querySelector('[data-chosen]'))

const learn = (kitchen: FixtureKitchen, done: string | null, next: string | null): void => {
  const learned = (name: string | null): { code: string; key: string } | null =>
    name === null ? null : { code: name, key: name === 'Space' ? ' ' : name }
  kitchen.signals.settings.value = {
    ...kitchen.settings.value,
    pedalDone: learned(done),
    pedalNext: learned(next)
  }
}

describe('a pedal or a key', () => {
  it.each([
    ['PageDown', 'pedal'],
    ['ArrowRight', 'pedal'],
    ['Enter', 'key'],
    [' ', 'key']
  ])('%s presses the pad of the pot shown, and the journal has it by %s', async (name, via) => {
    const kitchen = await open(made.mossLate(), made.heather())
    await key(name)
    expect(sent(kitchen)).toEqual([{ type: 'MarkDone', path: 'A2' }])
    expect(viaOf(kitchen)).toEqual([via])
  })

  it('held down presses once', async () => {
    const kitchen = await open(made.mossLate())
    await key('PageDown', { repeat: true })
    expect(sent(kitchen)).toEqual([])
  })

  it('does nothing while something is typed', async () => {
    const kitchen = await open(made.mossLate())
    const field = document.body.appendChild(document.createElement('textarea'))
    field.focus()
    await key('PageDown')
    field.remove()
    expect(sent(kitchen)).toEqual([])
  })

  it('numbers choose a pot, and the second pedal goes round them', async () => {
    await open(made.moss(), made.plum(), made.ochre())
    const shown = (): string | null | undefined =>
      document.querySelector('.bath[data-shown]')?.getAttribute('aria-label')
    await key('3')
    expect(shown()).toBe('Ochre')
    await key('PageUp')
    expect(shown()).toBe('Moss')
    await key('PageUp')
    expect(shown()).toBe('Plum')
    await key('1')
    expect(shown()).toBe('Moss')
  })

  it('on a call the second pedal says it again: the sound, and the words for a screen reader', async () => {
    const kitchen = await open(made.mossLate(), made.heather())
    let sounded = 0
    kitchen.sayAgain = () => {
      sounded += 1
    }
    const words = (): Element | null => document.querySelector('[aria-live=assertive] > *')
    const before = words()
    await key('PageUp')
    expect(sounded).toBe(1)
    expect(words()).not.toBe(before)
    expect(text(words())).toBe('Moss. Acid 2 in. 30 mL.')
    expect(sent(kitchen)).toEqual([])
  })

  it('never answers a call that lies unseen under what was missed', async () => {
    const kitchen = await open(made.mossLate())
    kitchen.signals.missed.value = [
      { potId: 'p', colourway: 'Moss', path: 'A2', what: 'Acid 2', dueAtMs: noon - 72_000, byMs: 72_000, late: '' }
    ]
    await settle()
    await key('PageDown')
    expect(sent(kitchen)).toEqual([])
    expect(kitchen.missed.value).toEqual([])
    await key('PageDown')
    expect(sent(kitchen)).toEqual([{ type: 'MarkDone', path: 'A2' }])
  })
})

describe('answers by two pedals', () => {
  it('a judgement: the first press shows where the foot is, one moves, the other takes', async () => {
    const kitchen = await open(made.slateAsks())
    await key('PageDown')
    expect(sent(kitchen)).toEqual([])
    expect(chosen()).toContain('clear')
    await key('PageUp')
    await key('PageUp')
    expect(chosen()).toContain('tint')
    await key('PageDown')
    expect(text(call())).toContain('What hue is left?')
    for (let moves = 0; moves < 6; moves++) await key('PageUp')
    expect(chosen()).toBe('blue')
    await key('PageDown')
    expect(sent(kitchen)).toEqual([
      { type: 'AnswerStep', path: 'clear[1]/ask', answer: { kind: 'grade', grade: 'tint', hue: 'blue' } }
    ])
    expect(viaOf(kitchen)).toEqual(['pedal'])
  })

  it('goes round the answers, and to nothing else of the call', async () => {
    await open(made.slateChooses())
    const seen: string[] = []
    for (let moves = 0; moves < 4; moves++) {
      await key('PageUp')
      seen.push(chosen())
    }
    expect(seen).toEqual(['Level', 'Patchy', 'Level', 'Patchy'])
  })

  it('a reading on the sheet that a pedal opened', async () => {
    const kitchen = await open(made.moss())
    await key('PageDown')
    expect(text(sheet())).toContain('Moss: read temperature')
    await key('PageUp')
    await key('PageUp')
    expect(chosen()).toBe('85')
    await key('PageDown')
    expect(sent(kitchen)).toEqual([{ type: 'ReadTemperature', tempC: 85 }])
    expect(viaOf(kitchen)).toEqual(['pedal'])
  })

  it('two presses in one breath take nothing', async () => {
    const kitchen = await open(made.slateAsks())
    fireEvent.keyDown(document.body, { key: 'PageDown' })
    fireEvent.keyUp(document.body, { key: 'PageDown' })
    pass(400)
    fireEvent.keyDown(document.activeElement as Element, { key: 'PageDown' })
    await settle()
    expect(chosen()).toContain('clear')
    expect(sent(kitchen)).toEqual([])
    await key('PageDown')
    expect(sent(kitchen)).toHaveLength(1)
  })

  it('what can’t be undone wants the foot held as well', async () => {
    const kitchen = await open(made.done())
    await key('PageDown')
    await key('PageDown')
    expect(text(sheet())).toContain('What becomes of the bath')
    await key('PageUp')
    expect(chosen()).toContain('Dropped')
    expect(chosen()).toContain('press and hold')
    await key('PageDown')
    expect(sent(kitchen)).toHaveLength(1)
    await keyHeld('PageDown')
    expect(sent(kitchen).at(-1)).toEqual({ type: 'Finish', bath: 'dropped' })
    expect(viaOf(kitchen)).toEqual(['pedal', 'pedal'])
  })
})

describe('a learned pedal', () => {
  it('takes the place of the delivered keys, also where it is a key that presses pads', async () => {
    const kitchen = await open(made.mossLate(), made.heather())
    learn(kitchen, 'Space', 'Enter')
    await settle()
    screen.getByRole('button', { name: 'See pots' }).focus()
    await key('PageDown', { code: 'PageDown' })
    expect(sent(kitchen)).toEqual([])
    await key(' ', { code: 'Space' })
    expect(sent(kitchen)).toEqual([{ type: 'MarkDone', path: 'A2' }])
    expect(viaOf(kitchen)).toEqual(['pedal'])
  })

  it('that is the only one moves by short presses and takes by a long one', async () => {
    const kitchen = await open(made.slateAsks())
    learn(kitchen, 'PageDown', null)
    await settle()
    const short = (): Promise<void> => key('PageDown', { code: 'PageDown' })
    const long = async (): Promise<void> => {
      const on = document.activeElement as Element
      fireEvent.keyDown(on, { key: 'PageDown', code: 'PageDown' })
      expect(on.hasAttribute('data-held')).toBe(true)
      await new Promise((done) => setTimeout(done, 750))
      fireEvent.keyUp(on, { key: 'PageDown', code: 'PageDown' })
      await settle()
    }
    await short()
    await short()
    await short()
    expect(chosen()).toContain('tint')
    await long()
    expect(text(call())).toContain('What hue is left?')
    expect(sent(kitchen)).toEqual([])
    await short()
    await long()
    expect(sent(kitchen)).toMatchObject([{ answer: { kind: 'grade', grade: 'tint', hue: 'yellow' } }])
  })
})

describe('undo', () => {
  it('stands on the pot’s next call by the name of the act, and is gone with the next act', async () => {
    const kitchen = await open(made.plumLifted())
    expect(text(call())).toContain('Undo Lift')
    await tap('Plum: acid is in', call())
    expect(text(call())).toContain('Stir')
    await tap('Undo Acid 2', call())
    expect(sent(kitchen).at(-1)).toEqual({ type: 'Undo' })
    expect(text(call())).toContain('Acid 2 in')
    await tap('Plum: acid is in', call())
    await tap('Plum: stirred', call())
    expect(within(call()).queryByRole('button', { name: 'Undo Acid 2' })).toBeNull()
    within(call()).getByRole('button', { name: 'Undo Stir' })
  })

  it('names the act of the person, not what the clock closed after it', async () => {
    const kitchen = await open(made.mossLate())
    within(call()).getByRole('button', { name: 'Undo reading' })
    await tap('Undo reading', call())
    expect(kitchen.sent.at(-1)).toMatchObject({ command: { type: 'Undo' }, via: 'tap' })
    within(call()).getByRole('button', { name: 'Undo Acid 1' })
  })

  it('says nothing of "written down" once the act is taken back', async () => {
    await open(made.mossLate())
    await tap('Moss: acid is in', call())
    expect(text(document.body)).toContain('acid is in. Written down.')
    await tap(/^Undo for Moss/)
    expect(text(document.body)).not.toContain('Written down')
  })
})
