import { describe, expect, it } from 'vitest'
import { whistle } from '../../src/app/whistle.ts'
import { memoryEar } from '../../src/shell/whistle/memory-ear.ts'

function onTable() {
  const ear = memoryEar()
  const at = { on: true, watched: true }
  const listeners = { tick: () => {}, speaking: (_: boolean) => {}, sounding: (_: number) => {} }
  const back: string[] = []
  const made = whistle({
    ear,
    on: () => at.on,
    watched: () => at.watched,
    onTick: (tick) => {
      listeners.tick = tick
    },
    onSpeaking: (listener) => {
      listeners.speaking = listener
    },
    onSounding: (listener) => {
      listeners.sounding = listener
    },
    sayBack: (words) => back.push(words)
  })
  return { ear, at, made, back, tick: () => listeners.tick(), hears: listeners }
}

describe('the microphone', () => {
  it('is open only while whistles answer and a pot is watched, and its lamp says so', () => {
    const { ear, at, made, tick } = onTable()
    expect(made.lamp.value).toBeNull()
    tick()
    expect(ear.state()).toBe('listening')
    expect(made.lamp.value).toMatchObject({ id: 'whistle', ok: true })
    at.watched = false
    tick()
    expect([ear.state(), made.lamp.value]).toEqual(['off', null])
    at.watched = true
    at.on = false
    tick()
    expect(ear.state()).toBe('off')
  })

  it('is opened for a trial and shut after it', () => {
    const { ear, at, made } = onTable()
    at.on = false
    made.kitchen.try(true)
    expect(made.kitchen.ear.value.open).toBe(true)
    made.kitchen.try(false)
    expect(ear.state()).toBe('off')
  })

  it('that was refused is not asked for again and again: its lamp waits for a tap', () => {
    const { ear, made, tick } = onTable()
    tick()
    ear.become('refused', 'The microphone was refused.')
    tick()
    expect(ear.state()).toBe('refused')
    expect(made.lamp.value).toMatchObject({ ok: false, say: 'The microphone was refused.' })
    made.lamp.value?.tap?.()
    expect(ear.state()).toBe('listening')
  })

  it('is deaf while the app itself sounds or speaks', () => {
    const { ear, tick, hears } = onTable()
    tick()
    hears.sounding(750)
    hears.speaking(true)
    tick()
    hears.speaking(false)
    tick()
    expect(ear.deaf).toEqual([750, 600, 600])
  })

  it('tells each whistle once, with when it began', () => {
    const { ear, made, tick } = onTable()
    tick()
    ear.hear({ kind: 'rise', atMs: 10_000, semitones: 7, lengthMs: 600 })
    ear.hear({ kind: 'fall', atMs: 12_000, semitones: -7, lengthMs: 500 })
    expect(made.kitchen.heard.value).toEqual({ no: 2, kind: 'fall', beganMs: 11_500, semitones: -7, lengthMs: 500 })
  })
})
