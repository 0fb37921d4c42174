// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { dropDraft } from '../../../src/ui/parts/start-draft.ts'
import { StartScreen } from '../../../src/ui/screens/start/index.tsx'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'
import { noon } from '../stove/fixtures.ts'
import { dip } from './dip.ts'

async function open(boilsAt = ''): Promise<TestKitchen> {
  const kitchen = aKitchen({ protocols: [dip()], nowMs: noon })
  kitchen.beforeTheHeat = async () => [{ what: 'sound', ok: true, say: 'Sound ready' }]
  await kitchen.changeSettings({ boilsAt, loudnessTried: true })
  render(<StartScreen kitchen={kitchen} protocolId="dip" />)
  await screen.findByText('Goods')
  return kitchen
}

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const numbers = (): string => plain(screen.getByRole('region', { name: 'The numbers' }).textContent)
const type = (label: string, value: string): void => {
  fireEvent.input(screen.getByLabelText(label), { target: { value } })
}
const press = (name: string | RegExp): void => {
  forgetTaps()
  fireEvent.click(screen.getByRole('button', { name: (found) => plain(found).match(name) !== null }))
}

beforeEach(() => {
  forgetTaps()
  dropDraft('dip')
})
afterEach(cleanup)

describe('the numbers of a pot that is to start', () => {
  it('follow as the weights are typed: liquor, estimated pH after each portion, and what it presumes', async () => {
    await open()
    expect(numbers()).not.toContain('pH')
    type('Dry weight', '50')
    expect(numbers()).toContain('30:1: 1.5 L of water. With all that goes in 1.56 L, 31.2:1.')
    expect(numbers()).toMatch(/After white vinegar 1 of 2: \d\.\d to \d\.\d on a cooled spoon/)
    expect(numbers()).toContain('measure for the record')
    expect(numbers()).toContain('20 to 300 mg/L is presumed')
    type('Alkalinity of the water', '100')
    expect(numbers()).toContain('Water with an alkalinity of 100 mg/L.')
  })

  it('tell that the pot is too small, keep the bath to what fits, and let it go again', async () => {
    await open()
    type('Dry weight', '50')
    type('The pot holds', '1.8')
    expect(numbers()).toContain('fills more than two thirds of the pot')
    press(/^Keep it to/)
    expect(numbers()).toContain('The pot changes the liquor ratio: 22.8:1 in place of 30:1.')
    expect(numbers()).not.toContain('two thirds of the pot, which')
    press(/^Let it follow the ratio/)
    expect(numbers()).toContain('fills more than two thirds of the pot')
  })

  it('take a bare size of the pot in the dyer’s own measure', async () => {
    const kitchen = await open()
    await kitchen.changeSettings({ volume: 'us' })
    type('Dry weight', '50')
    const field = (): string => plain(screen.getByLabelText('The pot holds').closest('.field')?.textContent)
    await expect.poll(field).toContain('US quart')
    // 1.56 L in 2.37 L leaves a third of it, in 2.37 quarts it does not.
    type('The pot holds', '2.37')
    await expect.poll(numbers).toContain('fills more than two thirds of the pot')
    type('The pot holds', '2.37 L')
    await expect.poll(numbers).not.toContain('fills more than two thirds of the pot')
  })

  it('mend a dose too small for a syringe by a weaker stock, from which the bench is set out', async () => {
    await open()
    type('Dry weight', '2')
    expect(numbers()).toContain('is too little for a syringe')
    press(/^Take a 0\.1 % one/)
    expect((document.getElementById('start-bottle-stock Y-percent') as HTMLInputElement).value).toBe('0.1')
    expect(plain(document.querySelector('.start-bench')?.textContent)).toContain('16 mL of stock Y')
  })

  it('lead to the field that settles a flag, opening what it is folded in', async () => {
    await open()
    type('Dry weight', '50')
    type('The pot holds', '1.8')
    const fold = document.querySelector<HTMLDetailsElement>('.start-counts-on')
    expect(fold?.open).toBe(false)
    press(/^To the pot’s size/)
    expect(fold?.open).toBe(true)
    expect(document.activeElement?.id).toBe('start-pot-holds')
  })

  it('take the boil from the settings, and keep there what is typed here', async () => {
    const kitchen = await open('1500 m')
    type('Dry weight', '50')
    expect(numbers()).toContain('95 °C')
    type('Water boils here at', '2000 m')
    expect(numbers()).toContain('93.3 °C')
    press(/^Keep it for every pot/)
    expect(kitchen.settings.value.boilsAt).toBe('2000 m')
  })

  it('are kept by the pot that starts, as they were shown', async () => {
    const kitchen = await open()
    type('Dry weight', '50')
    type('The pot holds', '1.8')
    forgetTaps()
    fireEvent.click(screen.getByText('Start'))
    const go = await screen.findByText('Start all the same')
    forgetTaps()
    fireEvent.click(go)
    await expect.poll(() => kitchen.started).toHaveLength(1)
    const kept = kitchen.started[0]?.numbers
    expect(kept?.ph.map(({ after }) => after)).toEqual(['white vinegar 1 of 2', 'white vinegar 2 of 2'])
    expect(kept?.flags.map(({ code }) => code)).toEqual(['pot-full'])
    expect(kept?.alkalinity.presumed).toBe(true)
  })

  it('say what can’t be read, at its field, and open the fold it is in', async () => {
    await open()
    type('Dry weight', '50')
    type('Water boils here at', 'high up')
    forgetTaps()
    fireEvent.click(screen.getByText('Start'))
    expect(document.querySelector<HTMLDetailsElement>('.start-counts-on')?.open).toBe(true)
    expect(screen.getByLabelText('Water boils here at').getAttribute('aria-invalid')).toBe('true')
  })
})
