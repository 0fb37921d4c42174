// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { SettingsScreen } from '../../../src/ui/screens/settings/index.tsx'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'

function open(): TestKitchen {
  const kitchen = aKitchen({ nowMs: 0 })
  render(<SettingsScreen kitchen={kitchen} />)
  return kitchen
}
beforeEach(forgetTaps)
afterEach(cleanup)

let tapMs = 0
const realNow = performance.now
beforeEach(() => {
  performance.now = () => (tapMs += 1_000)
})
afterEach(() => {
  performance.now = realNow
})

async function tap(name: string | RegExp): Promise<void> {
  fireEvent.click(screen.getByRole('button', { name }))
  await drawn()
}
/** Effects run after the drawing. */
const drawn = async (): Promise<void> => {
  for (let i = 0; i < 4; i++) await new Promise((done) => setTimeout(done, 0))
}
async function press(key: string, code = key, more: KeyboardEventInit = {}): Promise<boolean> {
  const goesOn = fireEvent.keyDown(document.body, { key, code, ...more })
  fireEvent.keyUp(document.body, { key, code })
  await drawn()
  return goesOn
}
const section = (): string =>
  (document.querySelector('#settings-pedal')?.parentElement?.textContent ?? '').replaceAll('\u00a0', ' ')

describe('press your pedal now', () => {
  it('learns the key that is pressed, shows it, and forgets it again', async () => {
    const kitchen = open()
    expect(section()).toContain('Key: Page Down or arrow right')
    await tap('Done: learn a key')
    expect(section()).toContain('Press your pedal now')
    await press(' ', 'Space')
    expect(kitchen.settings.value.pedalDone).toEqual({ code: 'Space', key: ' ' })
    expect(section()).toContain('Key: Space')
    expect(section()).toContain('Learned: Space.')
    expect(section()).not.toContain('Press your pedal now')
    await tap('Done: forget Space')
    expect(kitchen.settings.value.pedalDone).toBeNull()
    expect(section()).toContain('Key: Page Down or arrow right')
  })

  it('says what one pedal alone does, until a second one is learned', async () => {
    const kitchen = open()
    await tap('Done: learn a key')
    await press('PageDown')
    expect(section()).toContain('One pedal: ')
    expect(section()).toContain('Key: none')
    await tap('Say it again: learn a key')
    await press('PageUp')
    expect(kitchen.settings.value.pedalNext).toEqual({ code: 'PageUp', key: 'PageUp' })
    expect(section()).not.toContain('One pedal: ')
  })

  it('refuses a key that breaks something, says why, and goes on listening', async () => {
    const kitchen = open()
    await tap('Done: learn a key')
    await press('b', 'KeyB')
    expect(section()).toContain('“b” is needed for typing')
    await press('Shift', 'ShiftLeft')
    expect(section()).toContain('Shift does nothing alone')
    // The keyboard must not be caught here: Tab goes on to the next pad.
    expect(await press('Tab')).toBe(true)
    expect(section()).toContain('Tab moves between the pads')
    expect(kitchen.settings.value.pedalDone).toBeNull()
    await press('ArrowDown')
    expect(kitchen.settings.value.pedalDone?.key).toBe('ArrowDown')
  })

  it('takes no key that is held down, and none that has a role already', async () => {
    const kitchen = open()
    await tap('Done: learn a key')
    await press('PageDown', 'PageDown', { repeat: true })
    expect(kitchen.settings.value.pedalDone).toBeNull()
    await press('PageDown')
    await tap('Say it again: learn a key')
    await press('PageDown')
    expect(section()).toContain('Page Down is “Done” already')
    expect(kitchen.settings.value.pedalNext).toBeNull()
  })

  it('is left by a tap, and then hears nothing', async () => {
    const kitchen = open()
    await tap('Done: learn a key')
    await tap(/Press your pedal now/)
    await press('PageDown')
    expect(kitchen.settings.value.pedalDone).toBeNull()
  })
})

describe('wet hands', () => {
  it.each(['Wet mode', 'Headset buttons'])('%s is off until it is chosen', async (name) => {
    const kitchen = open()
    const setting = name === 'Wet mode' ? 'wet' : 'headset'
    expect(kitchen.settings.value[setting]).toBe(false)
    const row = screen.getByRole('group', { name })
    fireEvent.click(row.querySelector('button') as Element)
    await drawn()
    expect(kitchen.settings.value[setting]).toBe(true)
  })

  it('says that the headset’s buttons are taken from music', () => {
    open()
    expect(document.body.textContent).toContain('taken from music')
  })
})
