// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest'
import { newId } from '../../src/app/new-id.ts'
import { rehearsalOf } from '../../src/app/rehearsal-seam.ts'
import { hashRoute } from '../../src/app/route.ts'
import { keptSettings, settingsFor } from '../../src/app/settings.ts'
import { isWatched } from '../../src/app/watched.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'
import { Bench, T0 } from '../core/pot/given.ts'
import { act, MIN, programme, ramp, wait } from '../core/pot/programmes.ts'

describe('a pot is watched', () => {
  const watched = (bench: Bench): boolean => isWatched({ state: bench.state, alerts: [] }, bench.nowMs)

  it('when something is due within half an hour, and rests before that', () => {
    const bench = Bench.start(programme([wait('cool', 12 * 60 * MIN), act('lift')]))
    expect(watched(bench)).toBe(false)
    bench.pass(11.4 * 60)
    expect(watched(bench)).toBe(false)
    bench.pass(10)
    expect(watched(bench)).toBe(true)
  })

  it('while the heat is on, however far the next moment is, and not after it has ended', () => {
    const bench = Bench.start(programme([ramp('heat', 20, 85, 0.1), act('off', { heat: 'off' })]))
    expect(watched(bench)).toBe(true)
    bench.do({ type: 'Abort', reason: 'test' })
    expect(watched(bench)).toBe(false)
  })

  it('while a call stands', () => {
    const bench = Bench.start(programme([wait('cool', 12 * 60 * MIN)]))
    expect(isWatched({ state: bench.state, alerts: [{} as never] }, bench.nowMs)).toBe(true)
  })
})

describe('a rehearsal', () => {
  it('is asked for in the address, goes on over a reload, and begins anew after half a day or at another speed', () => {
    localStorage.clear()
    const at = (search: string, nowMs: number) => rehearsalOf(search, () => localStorage, nowMs)
    expect(at('', T0)).toBeNull()
    expect(at('?rehearse=60', T0)).toEqual({ speed: 60, anchorMs: T0, fresh: true })
    expect(at('?rehearse=60', T0 + 5_000)).toEqual({ speed: 60, anchorMs: T0, fresh: false })
    expect(at('?rehearse=30', T0 + 6_000)).toEqual({ speed: 30, anchorMs: T0 + 6_000, fresh: true })
    expect(at('?rehearse=30', T0 + 13 * 3_600_000)).toMatchObject({ fresh: true })
  })

  it('takes an odd speed as real time and keeps a wild one within reason', () => {
    const speedOf = (speed: string) => rehearsalOf(`?rehearse=${speed}`, () => localStorage, T0)?.speed
    expect([speedOf(''), speedOf('fast'), speedOf('-3'), speedOf('1e9')]).toEqual([1, 1, 1, 3_600])
  })
})

describe('settings', () => {
  it('are there again next time, and what is stored wrong does not count', async () => {
    const kept = memoryKept()
    const first = keptSettings(kept, 'en-GB')
    await first.change({ theme: 'dark', volumeLevel: 0.3, dyer: 'demo' })
    await kept.set('settings', { ...first.settings.value, volume: 'buckets', volumeLevel: 7, sound: 'yes', extra: 1 })
    const next = keptSettings(kept, 'en-GB')
    await next.load()
    expect(next.settings.value).toEqual({ ...settingsFor('en-GB'), theme: 'dark', dyer: 'demo' })
  })

  it('begin with the paper of the country', () => {
    const paper = (language: string): string => settingsFor(language).paper
    expect(['en-US', 'fr-CA', 'es-MX', 'es-419-CL'].map(paper)).toEqual(['letter', 'letter', 'letter', 'letter'])
    expect(['en-GB', 'de', 'en', 'us', 'ca-ES', 'es-AR'].map(paper)).toEqual(['a4', 'a4', 'a4', 'a4', 'a4', 'a4'])
  })

  it('hold for the visit and say so where nothing can be stored', async () => {
    const kept = { ...memoryKept(), set: () => Promise.reject(new Error('full')) }
    const settings = keptSettings(kept, 'en-US')
    expect(await settings.change({ sound: false })).toMatchObject({ ok: false })
    expect(settings.settings.value).toMatchObject({ sound: false, temperature: 'F' })
  })
})

describe('addresses and ids', () => {
  it('are the part behind the hash, with the Stove as home', () => {
    const { route, go } = hashRoute()
    expect(route.value).toBe('#/stove')
    go('#/book')
    expect([route.value, location.hash]).toEqual(['#/book', '#/book'])
    go('/protocols')
    expect(route.value).toBe('#/protocols')
  })

  it('are UUIDs of version 4, with HTTPS or without', () => {
    const v4 = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/
    expect(newId()).toMatch(v4)
    const { randomUUID } = crypto
    Object.defineProperty(crypto, 'randomUUID', { value: undefined, configurable: true })
    expect(newId()).toMatch(v4)
    expect(newId()).not.toBe(newId())
    Object.defineProperty(crypto, 'randomUUID', { value: randomUUID, configurable: true })
  })
})
