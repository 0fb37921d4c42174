import { describe, expect, it } from 'vitest'
import { type SpeechMode, speechRung } from '../../../src/shell/speech/speech-rung.ts'
import { call, count, earshot } from './calls.ts'

const rungIn = (mode: SpeechMode) => {
  const ear = earshot()
  const now = { mode }
  const rung = speechRung(
    ear.voice,
    () => now.mode,
    ear.words,
    () => ear.clock.ms
  )
  return { ear, rung, now }
}

describe('the rung of speech', () => {
  it('has no lamp and says nothing while it is off', () => {
    const { ear, rung } = rungIn('off')
    ear.coming.cues = [count('Plum', 0)]
    rung.raise([call('Moss')])
    rung.look()
    expect(rung.lamp()).toBeNull()
    expect(ear.voice.said).toEqual([])
  })

  it('says in words that there is a voice, none, or none yet, and a tap lets it speak', () => {
    const { ear, rung } = rungIn('calls')
    const changed: unknown[] = []
    rung.onLamp(() => changed.push(rung.lamp()?.say))
    expect(rung.lamp()).toEqual({ ok: true, say: 'Voice ready', tap: null })
    ear.voice.become('none')
    expect(rung.lamp()).toEqual({ ok: false, say: 'No voice on this device: sounds and the screen only', tap: null })
    ear.voice.become('locked')
    expect(rung.lamp()).toMatchObject({ ok: false, say: 'No voice yet: tap to let it speak' })
    rung.lamp()?.tap?.()
    expect(changed.at(-1)).toBe('Voice ready')
  })

  it('never claims to be enough', () => {
    const { ear, rung } = rungIn('guide')
    for (const state of ['ready', 'none', 'locked'] as const) {
      ear.voice.become(state)
      expect(rung.lamp()?.say).not.toMatch(/enough|safe|instead|need no/i)
    }
  })

  it('counts down only for whoever wants to be guided', () => {
    for (const mode of ['calls', 'guide'] as const) {
      const { ear, rung } = rungIn(mode)
      ear.coming.cues = [count('Plum', 0)]
      rung.look()
      expect(ear.voice.said).toEqual(mode === 'guide' ? ['Plum. Three. Two. One. Lower.'] : [])
    }
  })

  it('falls silent when the last call is answered, and when it is turned off', () => {
    const { ear, rung, now } = rungIn('calls')
    rung.raise([call('Moss')])
    rung.rest()
    expect(ear.voice.now()).toBeNull()
    rung.raise([call('Moss')])
    now.mode = 'off'
    rung.raise([call('Moss')])
    expect(ear.voice.now()).toBeNull()
  })

  it('says an example when no pot is spoken of, and tells when there was no voice for it', async () => {
    const { ear, rung } = rungIn('calls')
    rung.raise([call('Moss')])
    const tried = rung.trySpeech('An example.')
    expect(ear.voice.now()).toBe('Moss call 1 now')
    ear.voice.end()
    expect(ear.voice.now()).toBe('An example.')
    ear.voice.end()
    expect(await tried).toBe(true)
    ear.voice.become('none')
    expect(await rung.trySpeech('An example.')).toBe(false)
  })
})
