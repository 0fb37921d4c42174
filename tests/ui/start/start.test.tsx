// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Check } from '../../../src/core/pot/events.ts'
import { trialInputs } from '../../../src/core/protocol/programme/trial.ts'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { draftFrom, draftOf, dropDraft, keepDraft } from '../../../src/ui/parts/start-draft.ts'
import { StartScreen } from '../../../src/ui/screens/start/index.tsx'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'
import { noon } from '../stove/fixtures.ts'
import { plum } from '../stove/pots.ts'
import { dip } from './dip.ts'

const good: Check[] = [{ what: 'sound', ok: true, say: 'Sound ready' }]

async function open(checks: Check[] = good, stored = dip()): Promise<TestKitchen> {
  const kitchen = aKitchen({ journals: [plum()], protocols: [stored], nowMs: noon })
  kitchen.beforeTheHeat = async () => checks
  render(<StartScreen kitchen={kitchen} protocolId="dip" />)
  await screen.findByText('Goods')
  return kitchen
}

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const page = (): string => plain(document.body.textContent)
const type = (label: string, value: string): void => {
  fireEvent.input(screen.getByLabelText(label), { target: { value } })
}
const start = (words = 'Start'): void => {
  forgetTaps()
  fireEvent.click(screen.getByText(words))
}
const cups = (): HTMLInputElement[] => [...document.querySelectorAll<HTMLInputElement>('.start-cup input')]
const setAllOut = (): void => {
  for (let i = 0; i < cups().length; i++) fireEvent.click(cups()[i] as HTMLInputElement)
}

beforeEach(() => {
  forgetTaps()
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
  dropDraft('dip')
})
afterEach(cleanup)

describe('starting a pot', () => {
  it('shows each portion of acid as a cup with the pot’s name, its amount and the sum', async () => {
    await open()
    type('Colourway', 'Moss')
    type('Dry weight', '50')
    const words = page()
    for (const cup of ['“Moss, white vinegar 1 of 2”', '“Moss, white vinegar 2 of 2”']) expect(words).toContain(cup)
    // 2 % owf on 50 g is 1 g; as vinegar of 5 % w/v 20 mL, in two cups. trade.md 3.5.
    expect(words).toContain('10 mL of white vinegar')
    const { protocol } = dip()
    const made = programmeOf(protocol, { ...trialInputs(protocol), skeins: [{ tag: 'B1', massG: 50 }] })
    if (!made.ok) throw new Error(JSON.stringify(made.problems))
    expect(made.programme.setOut).toHaveLength(4)
    for (const item of made.programme.setOut) expect(words).toContain(plain(item.sum))
  })

  it('goes by what is really in the bottle', async () => {
    await open()
    type('Dry weight', '50 g')
    const strength = screen.getAllByLabelText('Strength')[0] as HTMLInputElement
    fireEvent.input(strength, { target: { value: '80' } })
    fireEvent.click(screen.getAllByText('weight, g in 100 g')[0] as HTMLElement)
    fireEvent.input(screen.getByLabelText('Density'), { target: { value: '1.07' } })
    // 1 g of acid is 1.17 mL of 80 % w/w, density 1.070; half of it a cup. trade.md 3.5.
    await waitFor(() => expect(page()).toContain('0.58 mL of white vinegar'))
    expect(page()).toContain('Corrosive acid')
  })

  it('works all amounts out again when a skein is added', async () => {
    await open()
    type('Dry weight', '50 g')
    expect(page()).toContain('40 mL of stock Y')
    fireEvent.click(screen.getByText('Add a skein'))
    expect(page()).toContain('Together 100 g')
    expect(page()).toContain('80 mL of stock Y')
  })

  it('saves the coming alerts as a calendar file where the dyer asked for it, once the pot is on', async () => {
    const kitchen = await open()
    const order: string[] = []
    kitchen.saveCalendar = async () => {
      order.push('calendar')
      return { ok: true }
    }
    const { start: begin } = kitchen
    kitchen.start = async (given) => {
      order.push('start')
      return begin(given)
    }
    type('Colourway', 'Moss')
    type('Dry weight', '50')
    setAllOut()
    fireEvent.click(screen.getByLabelText(/as a calendar file/))
    await waitFor(() => expect(kitchen.settings.value.calendarAtStart).toBe(true))
    start()
    await waitFor(() => expect(order).toEqual(['start', 'calendar']))
  })

  it('starts with the pot as it was typed: skeins, colour, burner, amounts, checks, cautions', async () => {
    const kitchen = await open()
    type('Colourway', 'Moss')
    type('Dry weight', '50')
    setAllOut()
    start()
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
    const [started] = kitchen.started
    expect(started?.pot).toMatchObject({
      colourway: 'Moss',
      skeins: [{ massG: 50 }],
      fibre: 'wool',
      burner: 'front right',
      batchName: expect.stringMatching(/^\d{4}-\d{2}-\d{2} Moss$/),
      bath: { unknownDyeLeft: false }
    })
    const [other] = kitchen.pots.value
    if (!other || other.state.status === 'idle') throw new Error('no other pot')
    expect(started?.pot.letter).not.toBe(other.state.pot.letter)
    expect(started?.programme.goodsMassG).toBe(50)
    expect(started?.programme.given?.skeins).toEqual([{ tag: expect.any(String), massG: 50 }])
    expect(started?.protocol).toMatchObject({ title: 'Dip gradient, wool', text: dip().text, from: 'built-in' })
    expect(started?.checks.map((c) => [c.what, c.ok])).toEqual([
      ['sound', true],
      ['bench', true]
    ])
    expect(started?.cautionsShown).toEqual(expect.arrayContaining(['utensils', 'heat-on', 'acid-vapour']))
    expect(kitchen.route.value).toBe('#/stove')
    expect(draftOf('dip')).toBeNull()
  })

  it('says every problem at once, each at its field and leading there', async () => {
    const kitchen = await open()
    type('Bands', '40')
    type('Time for each band', 'soon')
    type('Fibre', '')
    fireEvent.input(screen.getAllByLabelText('Strength')[0] as HTMLElement, { target: { value: 'strong' } })
    start()
    expect(kitchen.started).toHaveLength(0)
    const said = (label: string): string => {
      const field = screen.getByLabelText(label)
      return plain(document.getElementById(`${field.id}-problem`)?.textContent)
    }
    expect(said('Dry weight')).toContain('The weight is missing.')
    expect(said('Bands')).toContain('outside the limits')
    expect(said('Time for each band')).toContain("can't be read")
    expect(said('Fibre')).toContain('The fibre is missing.')
    expect(document.querySelectorAll('.start-problems li')).toHaveLength(5)
    for (const problem of document.querySelectorAll('.start-problems li'))
      expect(problem.querySelector('button')).not.toBeNull()
  })

  it('keeps what was typed through another screen and a reload of the tab', async () => {
    await open()
    type('Colourway', 'Moss')
    type('Dry weight', '73 g')
    cleanup()
    await open()
    expect((screen.getByLabelText('Colourway') as HTMLInputElement).value).toBe('Moss')
    expect(JSON.parse(sessionStorage.getItem('strandline start dip') ?? '{}')).toMatchObject({
      skeins: [{ mass: '73 g' }]
    })
  })

  it('takes a used bath that this book knows nothing of, so that nobody is stuck on the first day', async () => {
    const kitchen = await open(good, dip({ parent: 'bath' }))
    type('Dry weight', '50')
    fireEvent.change(screen.getByLabelText('Bath'), { target: { value: 'not in this book' } })
    setAllOut()
    start()
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
    expect(kitchen.started[0]?.pot.bath).toMatchObject({ parentBatchId: null, unknownDyeLeft: true })
  })

  it('tells when another pot has that name already', async () => {
    await open()
    type('Colourway', ' plum')
    expect(page()).toContain('A pot called plum is on the stove already.')
  })

  it('tells when another pot stands on that burner', async () => {
    await open()
    expect(page()).not.toContain('stands there')
    fireEvent.click(screen.getByText('front left'))
    expect(page()).toContain('Plum stands there.')
  })

  it('asks which bath where the protocol goes on in a used one, and says that what is left in it is not known', async () => {
    const kitchen = await open(good, dip({ parent: 'bath' }))
    type('Dry weight', '50')
    start()
    expect(page()).toContain('This protocol goes on in a used bath.')
    const bath = (await screen.findByLabelText('Bath')) as HTMLSelectElement
    const plumId = kitchen.pots.value[0]?.potId as string
    fireEvent.change(bath, { target: { value: plumId } })
    setAllOut()
    start()
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
    expect(kitchen.started[0]?.pot.bath).toMatchObject({ parentBatchId: plumId, unknownDyeLeft: true })
  })
})

describe('before the heat', () => {
  const poor: Check[] = [
    { what: 'sound', ok: false, say: 'No sound: keep the screen in sight' },
    { what: 'screen', ok: true, say: 'The screen stays on' }
  ]

  it('asks the browser inside the tap, before anything else is waited for', async () => {
    const kitchen = await open()
    type('Dry weight', '50')
    let asked = false
    kitchen.beforeTheHeat = async () => {
      asked = true
      return good
    }
    start()
    expect(asked).toBe(true)
  })

  it('asks once whether the call is heard over the fan, and keeps the loudness that is chosen', async () => {
    const kitchen = await open()
    type('Dry weight', '50')
    setAllOut()
    const tried: number[] = []
    kitchen.trySound = async (level) => tried.push(level) > 0
    await kitchen.changeSettings({ loudnessTried: false })
    start()
    await screen.findByText('Heard over the fan?')
    expect(kitchen.started).toHaveLength(0)
    start('5 loud')
    await screen.findByText(/Played/)
    expect(tried).toEqual([1])
    expect(kitchen.settings.value).toMatchObject({ volumeLevel: 1, loudnessTried: true })
    forgetTaps()
    fireEvent.click(screen.getAllByText('Start').at(-1) as HTMLElement)
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
  })

  it('does not ask about the fan where sound is off', async () => {
    const kitchen = await open()
    type('Dry weight', '50')
    setAllOut()
    await kitchen.changeSettings({ loudnessTried: false, sound: false })
    start()
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
  })

  it('with a lamp out says what will be missing, and starts only when told all the same', async () => {
    const kitchen = await open(poor)
    type('Dry weight', '50')
    start()
    await screen.findByText('Before the heat')
    expect(kitchen.started).toHaveLength(0)
    expect(page()).toContain('No sound: keep the screen in sight')
    expect(page()).toContain('set a kitchen timer')
    expect(page()).toContain('0 of 4 set out')
    start('Start all the same')
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
    expect(kitchen.started[0]?.checks.filter((c) => !c.ok).map((c) => c.what)).toEqual(['sound', 'bench'])
  })

  it('a start that was not stored is no start: it says so, and the form stays', async () => {
    const kitchen = await open(poor)
    kitchen.start = async () => ({ ok: false, refusal: null, say: 'Not saved. The store is full.' })
    type('Colourway', 'Moss')
    type('Dry weight', '50')
    start()
    await screen.findByText('Before the heat')
    start('Start all the same')
    expect(await screen.findByText('Not saved. The store is full.')).toBeTruthy()
    expect(kitchen.route.value).toBe('#/stove')
    expect(draftOf('dip')?.colourway).toBe('Moss')
  })

  it('a double tap starts one pot', async () => {
    const kitchen = await open(poor)
    type('Dry weight', '50')
    start()
    await screen.findByText('Before the heat')
    const pad = screen.getByText('Start all the same')
    for (const _ of [1, 2]) {
      forgetTaps()
      // Straight at the pad: nothing is drawn anew between the two.
      pad.dispatchEvent(new MouseEvent('click', { bubbles: true }))
    }
    await waitFor(() => expect(kitchen.started.length).toBeGreaterThan(0))
    await new Promise((done) => setTimeout(done, 20))
    expect(kitchen.started).toHaveLength(1)
  })
})

describe('the same again', () => {
  it('fills in the whole form, scaled when the weights are changed', async () => {
    const kitchen = await open()
    type('Colourway', 'Moss')
    type('Dry weight', '50')
    type('Bands', '5')
    fireEvent.input(screen.getAllByLabelText('Strength')[0] as HTMLElement, { target: { value: '6' } })
    setAllOut()
    start()
    await waitFor(() => expect(kitchen.started).toHaveLength(1))
    const [first] = kitchen.started
    if (!first) throw new Error('not started')
    cleanup()
    keepDraft('dip', draftFrom(first.pot, first.programme))
    await open()
    const value = (label: string): string => (screen.getAllByLabelText(label)[0] as HTMLInputElement).value
    expect([value('Colourway'), value('Dry weight'), value('Bands'), value('Strength')]).toEqual([
      'Moss',
      '50 g',
      '5',
      '6'
    ])
    expect(cups().every((cup) => !cup.checked)).toBe(true)
    type('Dry weight', '100 g')
    expect(page()).toContain('80 mL of stock Y')
  })
})

describe('choosing a protocol', () => {
  it('lists them where none is given, and goes to its form', async () => {
    const kitchen = aKitchen({ protocols: [dip()], nowMs: noon })
    render(<StartScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByText('Dip gradient, wool'))
    expect(kitchen.route.value).toBe('#/start/dip')
  })

  it('says so where the protocol is not here any more', async () => {
    const kitchen = aKitchen({ protocols: [dip()], nowMs: noon })
    render(<StartScreen kitchen={kitchen} protocolId="gone" />)
    expect(await screen.findByText(/That protocol is not here/)).toBeTruthy()
  })
})

describe('a free pot', () => {
  it('stands beside the protocols, asks only goods, colourway and burner, and starts with its step open', async () => {
    dropDraft('free')
    const kitchen = aKitchen({ journals: [plum()], protocols: [dip()], nowMs: noon })
    kitchen.beforeTheHeat = async () => good
    const { rerender } = render(<StartScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByText('Start a free pot'))
    expect(kitchen.route.value).toBe('#/start/free')
    rerender(<StartScreen kitchen={kitchen} protocolId="free" />)
    await screen.findByText('Goods')
    expect(screen.queryByText('Bottles')).toBeNull()
    type('Colourway', 'Fern')
    type('Dry weight', '60')
    start()
    await waitFor(() => expect(kitchen.started.length + document.querySelectorAll('dialog').length).toBe(1))
    if (kitchen.started.length === 0) start('Start')
    const [started] = kitchen.started
    expect(started?.programme.steps).toMatchObject([{ path: 'free', open: true }])
    expect(started?.pot).toMatchObject({ colourway: 'Fern', skeins: [{ massG: 60 }] })
  })
})
