// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { settingsFor } from '../../src/app/settings.ts'
import { speechOf } from '../../src/app/speech.ts'
import { alertsDue } from '../../src/core/pot/alerts-due.ts'
import { lookAhead } from '../../src/core/pot/catch-up.ts'
import { memoryVoice } from '../../src/shell/speech/memory-voice.ts'
import type { Settings } from '../../src/ui/kitchen.ts'
import { Bench, T0 } from '../core/pot/given.ts'
import { act, dose, MIN, programme, wait } from '../core/pot/programmes.ts'

beforeEach(() => vi.useFakeTimers({ now: T0 }))
afterEach(() => vi.useRealTimers())

const plum = (): Bench =>
  Bench.start(
    programme([wait('hold', MIN), act('lift', { call: 'Lift to the rod', word: 'lift' }), dose('acid', 8, 'vinegar')])
  )

/** A pot, a tab and a voice; the clock goes by quarters of a second, and each sentence takes two. */
function kitchenOf(bench: Bench, change: Partial<Settings>, owns = true) {
  const voice = memoryVoice('locked')
  const settings = signal<Settings>({ ...settingsFor('en-GB'), ...change })
  const pots = () => [{ potId: 'plum', state: bench.state }]
  const speech = speechOf({ clock: { nowMs: () => Date.now() }, settings, pots, owns: () => owns }, voice)
  const heard: string[] = []
  const go = (untilSec: number): string[] => {
    let begunMs = 0
    for (; Date.now() <= T0 + untilSec * 1_000; vi.advanceTimersByTime(250)) {
      if (voice.now() !== null && Date.now() - begunMs >= 2_000) voice.end()
      const before = voice.said.length
      const ahead = lookAhead(bench.state, Date.now())
      const alerts = alertsDue(ahead, Date.now())
      speech.raise(alerts.map((alert) => ({ potId: 'plum', colourway: 'Moss', alert })))
      speech.look()
      for (const text of voice.said.slice(before)) {
        heard.push(`${(Date.now() - T0) / 1_000} ${text}`)
        begunMs = Date.now()
      }
    }
    return heard
  }
  return { voice, settings, speech, go }
}

describe('speech in the app', () => {
  it('guides to an act and calls it, in the words of the pot as it is by then', () => {
    const { go, voice } = kitchenOf(plum(), { voice: 'guide' })
    voice.prime()
    expect(go(85)).toEqual(['50 Moss. Lift in ten.', '57.75 Three. Two. One. Lift.', '79.75 Moss. Lift to the rod.'])
  })

  it('lets the alarm sound first where there is one', () => {
    for (const [sound, at] of [
      [true, '61'],
      [false, '60']
    ] as const) {
      vi.setSystemTime(T0)
      const { go, voice } = kitchenOf(plum(), { voice: 'calls', sound })
      voice.prime()
      expect(go(70)).toEqual([`${at} Moss. Lift to the rod.`])
    }
  })

  it('does not count down in a tab that does not alert', () => {
    const { go, voice } = kitchenOf(plum(), { voice: 'guide' }, false)
    voice.prime()
    expect(go(59)).toEqual([])
  })

  it('says its example in the dyer’s units, and takes the first tap to unlock the voice once it is on', () => {
    const { speech, voice, settings } = kitchenOf(plum(), { voice: 'off' })
    expect(speech.example()).toBe('Plum. Acid two. Thirty millilitres of vinegar.')
    document.dispatchEvent(new Event('click'))
    expect(voice.state()).toBe('locked')
    const choice = document.body.appendChild(document.createElement('button'))
    choice.addEventListener('click', () => {
      settings.value = { ...settings.value, voice: 'calls', volume: 'us' }
    })
    choice.click()
    expect(voice.state()).toBe('ready')
    expect(speech.example()).toBe('Plum. Acid two. Two point zero three US tablespoons of vinegar.')
  })

  it('says the call that stands again when asked, whole, and once where it is asked for twice', async () => {
    const { go, voice, speech } = kitchenOf(plum(), { voice: 'calls' })
    voice.prime()
    go(70)
    const before = voice.said.length
    voice.end()
    const key = alertsDue(lookAhead(plum().state, Date.now()), Date.now())[0]?.key ?? ''
    const asked = [speech.sayAgain('plum', key), speech.sayAgain('plum', key)]
    expect(voice.said.slice(before)).toEqual(['Moss. Lift to the rod.'])
    voice.end()
    expect(await Promise.all(asked)).toEqual([true, true])
    expect(voice.said.length).toBe(before + 1)
  })

  it('leaves it to the sound where no voice is on, and where nothing of that name calls', async () => {
    const { speech, voice, settings } = kitchenOf(plum(), { voice: 'calls' })
    voice.prime()
    expect(await speech.sayAgain('plum', 'no such call')).toBe(false)
    settings.value = { ...settings.value, voice: 'off' }
    vi.setSystemTime(T0 + 2 * MIN)
    const key = alertsDue(lookAhead(plum().state, Date.now()), Date.now())[0]?.key ?? ''
    expect(await speech.sayAgain('plum', key)).toBe(false)
    expect(voice.said).toEqual([])
  })
})
