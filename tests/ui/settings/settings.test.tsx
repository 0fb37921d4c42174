// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { general, rules } from '../../../src/core/safety/rules.ts'
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

describe('settings', () => {
  it.each([
    ['°F', { temperature: 'F' }],
    ['US measures', { volume: 'us' }],
    ['oz, lb', { mass: 'us' }],
    ['Dark', { theme: 'dark' }],
    ['On the screen only', { sound: false }]
  ])('%s is one tap, and shown as chosen', async (label, changed) => {
    const kitchen = open()
    fireEvent.click(screen.getByText(label))
    await waitFor(() => expect(kitchen.settings.value).toMatchObject(changed))
    expect(screen.getByText(label).getAttribute('aria-pressed')).toBe('true')
  })

  it('plays the loudness that is chosen, and says when the browser gives no sound', async () => {
    const kitchen = open()
    const tried: number[] = []
    kitchen.trySound = async (level) => {
      tried.push(level)
      return tried.length < 2
    }
    fireEvent.click(screen.getByText('5 loud'))
    await screen.findByText(/Played/)
    expect(kitchen.settings.value.volumeLevel).toBe(1)
    fireEvent.click(screen.getByText('Try at the stove'))
    await screen.findByText(/The browser gives no sound/)
    expect(tried).toEqual([1, 1])
  })

  it.each(['Calls', 'Guide'])(
    'a voice is off until it is chosen; %s says what it does and can be tried',
    async (label) => {
      const kitchen = open()
      let tried = 0
      kitchen.trySpeech = async () => ++tried < 2
      expect(screen.queryByText('Try the voice')).toBeNull()
      const voice = within(screen.getByRole('group', { name: 'Spoken by the device' }))
      expect(voice.getByRole('button', { name: 'Off' }).getAttribute('aria-pressed')).toBe('true')
      fireEvent.click(voice.getByRole('button', { name: label }))
      await waitFor(() => expect(kitchen.settings.value.voice).toBe(label.toLowerCase()))
      fireEvent.click(screen.getByText('Try the voice'))
      await screen.findByText(/^Said\./)
      forgetTaps()
      fireEvent.click(screen.getByText('Try the voice'))
      await screen.findByText(/^No voice spoke\./)
      expect(document.body.textContent).toContain('never in their place')
    }
  )

  it('says that nothing will be heard with the sound off', () => {
    open()
    fireEvent.click(screen.getByText('On the screen only'))
    expect(screen.getByText(/Nothing will be heard/)).toBeTruthy()
    expect(screen.queryByText('Try at the stove')).toBeNull()
  })

  it('keeps the dyer’s name when the field is left, not letter by letter', async () => {
    const kitchen = open()
    const field = screen.getByLabelText('Your name in the records')
    fireEvent.input(field, { target: { value: ' Dyer A ' } })
    expect(kitchen.settings.value.dyer).toBe('')
    fireEvent.focusOut(field)
    await waitFor(() => expect(kitchen.settings.value.dyer).toBe('Dyer A'))
  })

  it('says so when a setting could not be kept', async () => {
    const kitchen = open()
    kitchen.changeSettings = async () => ({ ok: false, refusal: null, say: 'Not saved. The store is full.' })
    fireEvent.click(screen.getByText('Dark'))
    expect(await screen.findByText('Not saved. The store is full.')).toBeTruthy()
  })

  it('tells where records are kept, as the browser says it', async () => {
    const kitchen = aKitchen({ nowMs: 0 })
    kitchen.storage = async () => ({
      kept: false,
      say: 'The browser may clear records.',
      usedBytes: 3_400_000,
      roomBytes: 2e9
    })
    render(<SettingsScreen kitchen={kitchen} />)
    expect(await screen.findByText('The browser may clear records.')).toBeTruthy()
    expect(document.body.textContent?.replaceAll('\u00a0', ' ')).toContain('In use: 3 MB of 2 GB.')
  })

  it('lists every caution with its source', () => {
    open()
    for (const caution of [...rules, ...general]) {
      expect(screen.getAllByText(caution.title).length, caution.id).toBeGreaterThan(0)
      expect(document.body.textContent, caution.id).toContain(caution.source)
    }
  })
})
