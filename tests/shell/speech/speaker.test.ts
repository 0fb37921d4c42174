import { describe, expect, it } from 'vitest'
import type { RungAlert } from '../../../src/shell/rung.ts'
import { speaker } from '../../../src/shell/speech/speaker.ts'
import { ahead, call, count, earshot, grave, late } from './calls.ts'

type Ear = ReturnType<typeof earshot>

/** What is begun, and when, while the alerts are as given for each second. */
function heard(ear: Ear, alertsAt: (sec: number) => RungAlert[], untilSec: number, toneMs?: () => number): string[] {
  const mouth = speaker(ear.voice, ear.words, () => ear.clock.ms, toneMs)
  ear.run(untilSec * 1_000, () => {
    mouth.stand(alertsAt(ear.clock.ms / 1_000))
    mouth.look()
  })
  expect(ear.voice.most(), 'voices at one time').toBeLessThanOrEqual(1)
  return ear.heard
}

describe('calls of several pots', () => {
  it('are said one after the other, late before now before soon', () => {
    const alerts = [
      call('Slate', { urgency: 'soon', kind: 'headsUp' }),
      call('Rust', { soft: true }),
      call('Moss'),
      late('Fern'),
      grave('Plum')
    ]
    expect(heard(earshot(), () => alerts, 12.5)).toEqual([
      '0 Plum call 1 late',
      '3 Fern call 1 late',
      '6 Moss call 1 now',
      '9 Rust call 1 now',
      '12 Slate call 1 soon'
    ])
  })

  it('are said again every 20 s, late ones every 8 s, and a heads-up or a stir never', () => {
    expect(heard(earshot(), () => [call('Moss')], 45)).toEqual([
      '0 Moss call 1 now',
      '20 Moss call 1 now again',
      '40 Moss call 1 now again'
    ])
    expect(heard(earshot(), () => [late('Plum')], 17)).toEqual([
      '0 Plum call 1 late',
      '8 Plum call 1 late again',
      '16 Plum call 1 late again'
    ])
    expect(heard(earshot(), () => [call('Rust', { soft: true })], 60)).toHaveLength(1)
    expect(heard(earshot(), () => [call('Rust', { urgency: 'soon' })], 60)).toHaveLength(1)
  })

  it('are said again only while no other waits', () => {
    const slow = earshot({ sentenceMs: 9_000 })
    const alerts = (sec: number): RungAlert[] => [grave('Plum'), ...(sec >= 1 ? [call('Moss'), call('Slate')] : [])]
    expect(heard(slow, alerts, 28)).toEqual([
      '0 Plum call 1 late',
      '9 Moss call 1 now',
      '18 Slate call 1 now',
      '27 Plum call 1 late again'
    ])
  })

  it('are not said any more once they were answered, and one that is being said ends there', () => {
    const alerts = (sec: number): RungAlert[] => (sec < 2 ? [call('Moss'), call('Slate')] : [call('Rust')])
    expect(heard(earshot(), alerts, 6)).toEqual(['0 Moss call 1 now', '2 Rust call 1 now'])
  })

  it('wait for the end of a sentence of another pot', () => {
    const alerts = (sec: number): RungAlert[] => [call('Moss'), ...(sec >= 1 ? [late('Plum')] : [])]
    expect(heard(earshot(), alerts, 4)).toEqual(['0 Moss call 1 now', '3 Plum call 1 late'])
  })

  it('do not wait where a late one gets worse, and what it broke off is said from the start', () => {
    const alerts = (sec: number): RungAlert[] => [call('Moss'), ...(sec >= 1 ? [grave('Plum')] : [])]
    expect(heard(earshot(), alerts, 5)).toEqual(['0 Moss call 1 now', '1 Plum call 1 late', '4 Moss call 1 now'])
  })

  it('never break off each other for ever: two that get worse take turns, and a repeat breaks off nothing', () => {
    const both = (sec: number): RungAlert[] => [grave('Plum'), ...(sec >= 1 ? [grave('Fern'), call('Moss')] : [])]
    expect(heard(earshot(), both, 16)).toEqual([
      '0 Plum call 1 late',
      '3 Fern call 1 late',
      '6 Moss call 1 now',
      '9 Plum call 1 late again',
      '12 Fern call 1 late again'
    ])
  })

  it('are new to the ear when they grow late, but not cut their own sentence', () => {
    const alerts = (sec: number): RungAlert[] => [sec < 1 ? call('Plum', { escalates: true }) : grave('Plum')]
    expect(heard(earshot(), alerts, 4)).toEqual(['0 Plum call 1 now', '3 Plum call 1 late again'])
  })

  it('let their alarm sound first', () => {
    expect(
      heard(
        earshot(),
        () => [call('Moss')],
        22,
        () => 900
      )
    ).toEqual(['1 Moss call 1 now', '21 Moss call 1 now again'])
  })

  it('wait for a voice, and are not worn out by one that fails', () => {
    const ear = earshot()
    ear.voice.become('locked')
    const mouth = speaker(ear.voice, ear.words, () => ear.clock.ms)
    const look = (): void => {
      mouth.stand([call('Moss')])
      mouth.look()
    }
    ear.run(2_000, look)
    expect(ear.voice.said).toEqual([])
    ear.voice.become('ready')
    ear.run(2_250, look)
    ear.voice.end(false)
    ear.run(20_000, look)
    expect(ear.heard).toEqual(['2.25 Moss call 1 now'])
  })
})

describe('a count down', () => {
  const nothing = (): RungAlert[] => []

  it('comes at its time, and names its pot when another was spoken of last', () => {
    const ear = earshot()
    ear.coming.cues = [ahead('Plum', 2_000), count('Plum', 9_600), count('Moss', 20_000)]
    expect(heard(ear, nothing, 22)).toEqual([
      '2 Plum. Lower in ten.',
      '9.75 Three. Two. One. Lower.',
      '20 Moss. Three. Two. One. Lower.'
    ])
  })

  it('is dropped when it would come more than a second and a half late', () => {
    const ear = earshot()
    ear.coming.cues = [count('Plum', 1_400)]
    expect(heard(ear, () => [call('Moss')], 8)).toEqual(['0 Moss call 1 now'])
    const nearly = earshot()
    nearly.coming.cues = [count('Plum', 1_500)]
    expect(heard(nearly, () => [call('Moss')], 8)).toEqual(['0 Moss call 1 now', '3 Plum. Three. Two. One. Lower.'])
  })

  it('of two pots at one time is said of one, never of both at once', () => {
    const ear = earshot()
    ear.coming.cues = [count('Plum', 1_000), count('Moss', 1_250)]
    expect(heard(ear, nothing, 9)).toEqual(['1 Plum. Three. Two. One. Lower.'])
  })

  it('is the first sentence of the call it ends in; unanswered it is called again 20 s later', () => {
    const ear = earshot()
    ear.coming.cues = [count('Plum', 1_000)]
    const alerts = (sec: number): RungAlert[] => {
      if (sec >= 3.5) ear.coming.cues = []
      return sec >= 3.5 ? [call('Plum')] : []
    }
    expect(heard(ear, alerts, 26)).toEqual(['1 Plum. Three. Two. One. Lower.', '24 Plum call 1 now again'])
  })

  it('that was broken off does not stand for the call', () => {
    const ear = earshot()
    ear.coming.cues = [count('Plum', 1_000)]
    const alerts = (sec: number): RungAlert[] => [
      ...(sec >= 2 ? [grave('Fern')] : []),
      ...(sec >= 3.5 ? [call('Plum')] : [])
    ]
    expect(heard(ear, alerts, 6)).toEqual([
      '1 Plum. Three. Two. One. Lower.',
      '2 Fern call 1 late',
      '5 Plum call 1 now'
    ])
  })

  it('that leaves an amount to say is followed by the call', () => {
    const ear = earshot()
    ear.coming.cues = [count('Plum', 1_000, { calls: null })]
    expect(heard(ear, (sec) => (sec >= 3.5 ? [call('Plum')] : []), 5)).toEqual([
      '1 Plum. Three. Two. One. Lower.',
      '4 Plum call 1 now'
    ])
  })

  it('is not drowned by what can wait: a repeat before it waits until it is over', () => {
    const ear = earshot()
    ear.coming.cues = [count('Plum', 21_500)]
    expect(heard(ear, () => [call('Moss')], 26)).toEqual([
      '0 Moss call 1 now',
      '21.5 Plum. Three. Two. One. Lower.',
      '24.5 Moss call 1 now again'
    ])
  })
})

describe('whoever must not hear the voice', () => {
  it('is told before it sounds and after it has ended, also when it is broken off', () => {
    const ear = earshot()
    const mouth = speaker(ear.voice, ear.words, () => ear.clock.ms)
    const told: [boolean, number][] = []
    mouth.onSpeaking((speaking) => told.push([speaking, ear.voice.said.length]))
    mouth.stand([call('Moss')])
    mouth.look()
    ear.voice.end()
    mouth.stand([call('Plum')])
    mouth.look()
    mouth.stand([])
    expect(told).toEqual([
      [true, 0],
      [false, 1],
      [true, 1],
      [false, 2]
    ])
    expect(ear.voice.now()).toBeNull()
  })
})
