// @vitest-environment happy-dom
import { fireEvent } from '@testing-library/preact'
import { describe, expect, it } from 'vitest'
import { type FixtureKitchen, noon } from './fixtures.ts'
import { atTheStove, call, key, open, settle, tap } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

/** Plum's fifth band is counted down to here. */
const CUE_MS = noon + 24_000

const said = (kitchen: FixtureKitchen) =>
  kitchen.sent.filter(({ command }) => command.type === 'MarkDone').map(({ agoMs, cueAtMs }) => ({ agoMs, cueAtMs }))

/** Plum, so long after the cue of its fifth band. */
async function secondsOn(
  seconds: number,
  change: Partial<FixtureKitchen['settings']['value']> = {},
  pot = made.plum()
) {
  const kitchen = await open(pot)
  kitchen.signals.settings.value = { ...kitchen.settings.value, ...change }
  kitchen.tick(CUE_MS + seconds * 1_000)
  await settle()
  return kitchen
}

async function press(): Promise<void> {
  fireEvent.click(call().querySelector('.call-pad') as HTMLElement)
  await settle()
}

describe('an act that was counted down to', () => {
  it('was done at its cue, though the hand that tells comes out of the bath later', async () => {
    const kitchen = await secondsOn(12)
    await press()
    expect(said(kitchen)).toEqual([{ agoMs: 0, cueAtMs: CUE_MS }])
    expect(kitchen.pots.value[0]?.state).toMatchObject({ lastAtMs: CUE_MS })
  })

  it.each(['PageDown', 'Enter'])('was done when %s says so: the foot is free while the hands are in', async (name) => {
    const kitchen = await secondsOn(12)
    await key(name)
    expect(said(kitchen)).toEqual([{ agoMs: 0, cueAtMs: null }])
  })

  it('was done when the dyer says so', async () => {
    const kitchen = await secondsOn(12)
    await tap('now', call())
    await press()
    expect(said(kitchen)).toEqual([{ agoMs: 0, cueAtMs: null }])
  })

  it('is back at its cue when that is chosen again', async () => {
    const kitchen = await secondsOn(12)
    await tap('1', call())
    await tap('cue', call())
    await press()
    expect(said(kitchen)).toEqual([{ agoMs: 0, cueAtMs: CUE_MS }])
  })

  it('was done now when the answer comes too long after it', async () => {
    const kitchen = await secondsOn(120)
    await press()
    expect(said(kitchen)).toEqual([{ agoMs: 0, cueAtMs: null }])
  })

  it('had no cue where a hand ended the wait before it', async () => {
    const early = made.plum([[4 * 60_000 + 30_000, { type: 'EndEarly', path: 'dip[4]/hold', reason: 'ready' }]])
    const kitchen = await open(early)
    await press()
    expect(said(kitchen)).toEqual([{ agoMs: 0, cueAtMs: null }])
  })
})

describe('after a long wait', () => {
  const at = (guided: boolean) =>
    secondsOn(7 * 60 + 18 - 24 + 5, { voice: guided ? 'guide' : 'calls' }, made.heatOffSoon())

  it('an act was counted down to only where a voice guides', async () => {
    const alone = await at(false)
    await press()
    expect(said(alone)).toEqual([{ agoMs: 0, cueAtMs: null }])
  })

  it('and then it takes the time of the count', async () => {
    const guided = await at(true)
    await press()
    expect(said(guided)).toEqual([{ agoMs: 0, cueAtMs: noon + 7 * 60_000 + 18_000 }])
  })
})
