// @vitest-environment happy-dom
import { cleanup, screen, waitFor } from '@testing-library/preact'
import { describe, expect, it } from 'vitest'
import { type FixtureKitchen, noon } from './fixtures.ts'
import { atTheStove, call, hold, key, open, sent, settle, sheet, tap, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

describe('a call', () => {
  it('names pot, act, amount, cup, caution and lateness, and is answered by one pad', async () => {
    const kitchen = await open(made.mossLate(), made.heather())
    for (const said of ['Moss', '1:12 late', 'Acid 2 in', '30 mL', 'cup “Moss, acid 2 of 3”', 'Hot liquor']) {
      expect(text(call())).toContain(said)
    }
    await tap('Moss: acid is in', call())
    expect(sent(kitchen)).toEqual([{ type: 'MarkDone', path: 'A2' }])
    await waitFor(() => expect(call()).toBeNull())
  })

  it('shows a caution in full at its first use of the day, writes that down, and has it in one line from then on', async () => {
    const shown = (kitchen: FixtureKitchen): string[] =>
      kitchen.sent.flatMap(({ command }) =>
        command.type === 'ShowCaution' ? [`${command.caution} ${command.path}`] : []
      )
    const full = (): string => text(call().querySelector('.caution'))
    const [ids, said] = [new Set<string>(), new Set<string>()]
    for (let use = 1; use <= 6; use++) {
      const kitchen = await open(made.mossLate())
      const [one, ...more] = shown(kitchen)
      expect(more).toEqual([])
      expect(one === undefined).toBe(full() === '')
      if (one !== undefined) {
        expect([ids.has(one), said.has(full())]).toEqual([false, false])
        ids.add(one)
        said.add(full())
      }
      cleanup()
    }
    expect(ids.size).toBeGreaterThanOrEqual(2)
    await open(made.mossLate())
    expect(full()).toBe('')
    expect(text(call().querySelector('.call-caution-line'))).toContain('face away')
  })

  it('takes the moment of the act from "5 min ago", once', async () => {
    const kitchen = await open(made.mossLate())
    const said = (): FixtureKitchen['sent'] => kitchen.sent.filter((s) => s.command.type !== 'ShowCaution')
    await tap('5', call())
    await tap('Moss: acid is in', call())
    expect(said().at(-1)).toMatchObject({ command: { type: 'MarkDone' }, agoMs: 300_000 })
    await tap(/^Undo for Moss/)
    expect(said().at(-1)).toMatchObject({ command: { type: 'Undo' }, agoMs: 0 })
  })

  it('takes what was really added where it was another amount', async () => {
    const kitchen = await open(made.mossLate())
    await tap('Other amount')
    await tap('10 less', sheet())
    await tap('Acid: 20 mL', sheet())
    expect(sent(kitchen)).toEqual([
      { type: 'MarkDone', path: 'A2', added: { value: 20, unit: 'mL', of: 'acid', asEntered: '20 mL' } }
    ])
  })

  it('is put off with a reason in two taps', async () => {
    const kitchen = await open(made.mossLate())
    await tap('Not yet', call())
    await tap('2 min', sheet())
    expect(sent(kitchen)).toEqual([{ type: 'NotYet', path: 'A2', byMs: 120_000, reason: 'hands in another pot' }])
    await waitFor(() => expect(sheet()).toBeNull())
  })

  it('is judged in two taps: the grade, then the hue of what is left', async () => {
    const kitchen = await open(made.slateAsks())
    await tap(/tint/)
    await tap('green')
    expect(sent(kitchen)).toEqual([
      { type: 'AnswerStep', path: 'clear[1]/ask', answer: { kind: 'grade', grade: 'tint', hue: 'green' } }
    ])
  })

  it('for a clear bath asks no hue', async () => {
    const kitchen = await open(made.slateAsks())
    await tap(/clear/)
    expect(sent(kitchen)).toMatchObject([{ answer: { kind: 'grade', grade: 'clear', hue: null } }])
  })

  it('with a choice offers each answer as a pad', async () => {
    const kitchen = await open(made.slateChooses())
    await tap('Patchy')
    expect(sent(kitchen)).toMatchObject([{ type: 'AnswerStep', answer: { kind: 'choice', answer: 'Patchy' } }])
  })

  it('laid aside leaves the pots in reach, and comes back', async () => {
    await open(made.mossLate(), made.heather())
    await tap('See pots')
    expect(call()).toBeNull()
    await tap('Show Moss')
    await waitFor(() => expect(call()).not.toBeNull())
  })

  it('beside another one gives way to it by "Show", and comes back by it', async () => {
    await open(made.mossLate(), made.slateAsks())
    const others = (): string => text(document.querySelector('.call-strips'))
    expect(others()).toContain('Slate: Judge the bath')
    await tap('Show Slate', call())
    expect(others()).toContain('Moss: Acid 2 in')
    expect(text(call())).toContain('tint')
    await tap('Show Moss', call())
    expect(others()).toContain('Slate: Judge the bath')
  })

  it('goes aside where a pot is asked for that has nothing to fill the screen with', async () => {
    await open(made.slateAsks(), made.mossSoon())
    await tap('Show Moss', call())
    expect(call()).toBeNull()
    expect(document.querySelector('.bath[data-shown]')?.getAttribute('aria-label')).toBe('Moss')
    await tap('Show Slate')
    expect(call()).not.toBeNull()
  })

  it('that can fill nothing and whose pot is in sight has no pad that would do nothing', async () => {
    await open(made.mossSoon())
    expect(text(document.querySelector('.strip-bath'))).toContain('Moss: ')
    expect(screen.queryByRole('button', { name: 'Show Moss' })).toBeNull()
  })

  it('of another pot stands above a pot with hands in it, never over it', async () => {
    await open(made.mossLate(), made.plum())
    expect(call()).toBeNull()
    expect(text(document.querySelector('.strip-bath'))).toContain('Moss: Acid 2 in, 1:12 late')
  })

  it('counts how long the skein is out, and with what limit', async () => {
    await open(made.plumLifted())
    expect(text(call())).toContain('Out of the bath 0:48 of 3:00')
  })

  it('that could not be saved says so and stays', async () => {
    const kitchen = await open(made.mossLate())
    kitchen.failNext = { ok: false, refusal: null, say: 'The store is full.' }
    await tap('Moss: acid is in', call())
    expect(text(call())).toContain('The store is full.')
    expect(call()).not.toBeNull()
  })
})

describe('an alert that is no step', () => {
  it('a heads-up names the act to come and when, and never lateness', async () => {
    await open(made.mossSoon())
    expect(text(document.querySelector('.strip-call'))).toBe('Moss: Soon: Acid 2 in, 0:30')
    expect(call()).toBeNull()
  })

  it('a limit between two acts names the act and the time that is left', async () => {
    await open(made.mossHurries())
    expect(text(document.querySelector('.strip-call'))).toBe('Moss: Acid 2: its limit runs out, 2 min')
  })

  it('a look at the water fills the screen and is answered by one pad', async () => {
    const kitchen = await open(made.ochreSteams())
    expect(text(call())).toContain('Look at the water level')
    await tap('Ochre: level is right', call())
    expect(sent(kitchen)).toEqual([{ type: 'MarkLooked', path: 'steam' }])
  })

  it('a skein too long out of its bath is called back in, by a pedal as well', async () => {
    const kitchen = await open(made.slateAirs())
    expect(text(call())).toContain('Back into the bath')
    expect(text(call())).toContain('Out of the bath 1:40 of 2:00')
    await key('PageDown')
    expect(sent(kitchen)).toMatchObject([{ type: 'PutSkeinsIn' }])
    expect(sent(kitchen)[0]).toHaveProperty('tags.length', 2)
  })

  it('heat left on after the last step is one pad, by a pedal as well', async () => {
    const kitchen = await open(made.done())
    await key('PageDown')
    expect(sent(kitchen)).toEqual([{ type: 'ChangeHeat', on: false, level: null }])
  })
})

describe('a bath', () => {
  it('takes a reading within 3 °C of the expected one in two taps', async () => {
    for (const reading of ['85', '88', '91']) {
      const kitchen = await open(made.moss())
      await tap('Moss: read temperature')
      await tap(new RegExp(`^${reading} °C`), sheet())
      expect(sent(kitchen)).toEqual([{ type: 'ReadTemperature', tempC: Number(reading) }])
      cleanup()
    }
  })

  it('ends the wait with the act where the hands were a little early', async () => {
    const kitchen = await open(made.plum())
    await tap('Plum: lowered')
    expect(sent(kitchen).map((c) => c.type)).toEqual(['EndEarly', 'MarkDone'])
  })

  it('of a stopped pot asks whether the time counts before it goes on', async () => {
    const kitchen = await open(made.plumStopped())
    await tap('Plum: go on')
    await tap(/It does not count/, sheet())
    expect(sent(kitchen)).toEqual([{ type: 'Resume', heldTimeCounts: false }])
  })

  it('of a finished pot asks what becomes of the bath, heat off first', async () => {
    const kitchen = await open(made.done())
    await tap('Fern: heat is off')
    await tap('Fern: finish')
    await tap(/^Stored/, sheet())
    expect(sent(kitchen)).toHaveLength(1)
    await hold(/^Stored/, sheet())
    expect(sent(kitchen)).toEqual([
      { type: 'ChangeHeat', on: false, level: null },
      { type: 'Finish', bath: 'stored' }
    ])
  })
})

describe('trouble', () => {
  it('says the act first, then takes what it is, when it began, how warm it is, and how it goes on', async () => {
    const kitchen = await open(made.moss())
    await hold(/^Trouble hold: Moss/)
    expect(text(sheet().querySelector('.trouble-act'))).toBe('Heat off. Hands out.')
    await tap('Power cut', sheet())
    expect(text(sheet().querySelector('.trouble-act'))).toBe('Turn the ring off. It may restart by itself.')
    await tap('5 min ago', sheet())
    await tap('on again', sheet())
    await tap('The bath now: 5 less', sheet())
    await tap('Time this step afresh', sheet())
    await tap('Moss: settled', sheet())
    expect(sent(kitchen)).toEqual([
      { type: 'CallTrouble', kind: 'power-cut' },
      { type: 'SettleTrouble', beganAtMs: noon - 300_000, tempC: 83, outcome: 'restart-step' }
    ])
  })

  it('asks in °F who reads °F, and writes °C', async () => {
    const kitchen = await open(made.moss())
    kitchen.signals.settings.value = { ...kitchen.settings.value, temperature: 'F' }
    await hold(/^Trouble hold: Moss/)
    await tap('Power cut', sheet())
    // Held at 88 °C: 190 °F to the whole degree, and five less is 185.
    await tap('The bath now: 5 less', sheet())
    expect(text(sheet().querySelector('.number-step-value'))).toBe('185 °F')
    await tap('Moss: settled', sheet())
    expect(sent(kitchen).at(-1)).toMatchObject({ type: 'SettleTrouble', tempC: 85 })
  })

  it('writes that the heat stayed off', async () => {
    const kitchen = await open(made.plumTrouble())
    await tap('Plum: settle it')
    await tap('Plum: settled', sheet())
    expect(sent(kitchen)[0]).toEqual({ type: 'ChangeHeat', on: false, level: null })
  })

  it('never says that going is safe', async () => {
    await open(made.moss(), made.plum())
    expect(text(document.body)).not.toMatch(/free to go|safe to|!/i)
    expect(text(document.querySelector('.stove-head'))).toContain('hands in')
  })
})

describe('the Stove', () => {
  it('shows what was missed first, and the pots after it was read', async () => {
    const kitchen = await open(made.mossLate())
    kitchen.signals.missed.value = [
      { potId: 'p', colourway: 'Moss', path: 'A2', what: 'Acid 2', dueAtMs: noon - 72_000, byMs: 72_000, late: '' }
    ]
    await waitFor(() => expect(screen.getByText('While you were away')).not.toBeNull())
    expect(call()).toBeNull()
    await settle()
    await tap('To the pots')
    await waitFor(() => expect(call()).not.toBeNull())
  })

  it('without pots says what it is and leads on', async () => {
    const kitchen = await open()
    expect(text(document.body)).toContain('No pot is on')
    await tap('Start a pot')
    expect(kitchen.route.value).toBe('#/start')
  })

  it('lays a cooling pot on the bench with its time', async () => {
    await open(made.fernCools(), made.moss())
    const bench = screen.getByRole('region', { name: 'Bench' })
    expect(text(bench)).toContain('Fern')
    expect(text(bench)).toContain('Cooling, 14 min')
  })

  it('shows a pot of the bench with its pads, also where every bath has room beside the others', async () => {
    await open(made.fernCools(), made.moss())
    expect(document.querySelector('.stove')?.getAttribute('data-layout')).toBe('whole')
    const bench = screen.getByRole('region', { name: 'Bench' })
    await tap(/^Fern/, bench)
    const bath = screen.getByRole('region', { name: 'Fern' })
    expect(text(bath)).toContain('Trouble')
    await tap(/^Fern/, bench)
    expect(screen.queryByRole('region', { name: 'Fern' })).toBeNull()
    expect(screen.getByRole('region', { name: 'Moss' })).toBeTruthy()
  })

  it('shows the only pot though it is on the bench', async () => {
    await open(made.fernCools())
    expect(screen.getByRole('region', { name: 'Fern' })).toBeTruthy()
  })

  it('redraws its clock without drawing the pads again', async () => {
    const kitchen = await open(made.moss())
    const pad = document.querySelector('.bath-pad')
    const before = text(document.querySelector('.giant'))
    const watched = new MutationObserver(() => {})
    watched.observe(document.querySelector('.bath-pads') as Node, {
      subtree: true,
      childList: true,
      attributes: true,
      characterData: true
    })
    kitchen.tick(noon + 1000)
    await settle()
    expect(text(document.querySelector('.giant'))).not.toBe(before)
    expect(document.querySelector('.bath-pad')).toBe(pad)
    expect(watched.takeRecords()).toEqual([])
  })

  it('says calls to a screen reader at once: pot, act, amount', async () => {
    await open(made.mossLate())
    expect(text(document.querySelector('[aria-live=assertive]'))).toBe('Moss. Acid 2 in. 30 mL.')
  })
})
