import { describe, expect, it } from 'vitest'
import type { Rung, RungAlert } from '../../src/shell/rung.ts'
import { cadence } from '../../src/shell/sound/cadence.ts'
import { deathWatch } from '../../src/shell/sound/death-watch.ts'
import { type MemoryPlayer, memoryPlayer } from '../../src/shell/sound/memory-player.ts'
import type { Pattern } from '../../src/shell/sound/patterns.ts'
import { render } from '../../src/shell/sound/render.ts'
import { soundRung } from '../../src/shell/sound/sound-rung.ts'
import { call } from './calling.ts'

const RATE_HZ = 48_000

/** How loud one tone is in a stretch of samples (Goertzel's method). */
function toneAt(samples: Float32Array, hz: number): number {
  let re = 0
  let im = 0
  samples.forEach((sample, nth) => {
    re += sample * Math.cos((2 * Math.PI * hz * nth) / RATE_HZ)
    im += sample * Math.sin((2 * Math.PI * hz * nth) / RATE_HZ)
  })
  return (2 * Math.hypot(re, im)) / samples.length
}

/** Start and length of each stretch that sounds, ms; gaps under 10 ms are part of a pulse. */
function pulsesOf(samples: Float32Array): { atMs: number; forMs: number }[] {
  const found: { atMs: number; forMs: number }[] = []
  let last = Number.NEGATIVE_INFINITY
  samples.forEach((sample, nth) => {
    if (Math.abs(sample) < 0.005) return
    const atMs = (nth / RATE_HZ) * 1000
    const pulse = found.at(-1)
    if (pulse === undefined || atMs - last > 10) found.push({ atMs, forMs: 0 })
    else pulse.forMs = atMs - pulse.atMs
    last = atMs
  })
  return found
}

describe('the sound of a call', () => {
  it.each([
    ['soon', 1, 550],
    ['now', 3, 660],
    ['late', 10, 740]
  ] as [Pattern, number, number][])('"%s" is %i pulses of about 150 ms', (pattern, count, hz) => {
    const samples = render(pattern, RATE_HZ)
    const found = pulsesOf(samples)
    expect(found).toHaveLength(count)
    for (const { forMs } of found) expect(forMs).toBeGreaterThan(130)
    for (const { forMs } of found) expect(forMs).toBeLessThanOrEqual(150)
    // Fundamental 500 to 1000 Hz, three harmonics up to 3 kHz, none of them a trace only.
    const first = samples.slice(0, 0.15 * RATE_HZ)
    expect(hz).toBeGreaterThanOrEqual(500)
    expect(hz * 4).toBeLessThanOrEqual(3000)
    for (const part of [1, 2, 3, 4]) expect(toneAt(first, hz * part)).toBeGreaterThan(0.08)
    expect(toneAt(first, hz * 1.5)).toBeLessThan(0.03)
  })

  it('late is three and two, given twice', () => {
    const gaps = pulsesOf(render('late', RATE_HZ)).map(({ atMs }) => Math.round(atMs / 100))
    expect(gaps).toEqual([0, 3, 6, 12, 15, 28, 31, 34, 40, 43])
  })

  it('never clips and never clicks: it rises and falls over 10 to 30 ms', () => {
    const samples = render('now', RATE_HZ)
    expect(Math.max(...samples.map(Math.abs))).toBeLessThanOrEqual(1)
    const loudest = (fromMs: number, toMs: number): number =>
      Math.max(...samples.slice((fromMs / 1000) * RATE_HZ, (toMs / 1000) * RATE_HZ).map(Math.abs))
    expect(loudest(0, 1)).toBeLessThan(0.05 * loudest(30, 120))
    expect(loudest(0, 10)).toBeLessThan(0.6 * loudest(30, 120))
    expect(loudest(149, 150)).toBeLessThan(0.05 * loudest(30, 120))
  })
})

/** The seconds of two minutes at which something sounds, asked four times a second. */
function heard(alertsAt: (sec: number) => RungAlert[]): string[] {
  const beat = cadence()
  const sounds: string[] = []
  for (let quarter = 0; quarter < 4 * 60; quarter++) {
    const next = beat.next(alertsAt(quarter / 4), quarter * 250)
    if (next !== null) sounds.push(`${next.pattern} ${quarter / 4}`)
  }
  return sounds
}

describe('how often a call sounds', () => {
  it('at once, and again every 20 s while it stands', () => {
    expect(heard((sec) => (sec >= 5 ? [call()] : []))).toEqual(['now 5', 'now 25', 'now 45'])
  })

  it('every 8 s when acid or the heat is at stake, and with the late pattern once it is late', () => {
    expect(heard((sec) => [call({ escalates: true, urgency: sec < 20 ? 'now' : 'late' })])).toEqual([
      ...['now 0', 'now 8', 'now 16'],
      ...['late 20', 'late 28', 'late 36', 'late 44', 'late 52']
    ])
  })

  it('once for a turn or a stir, and once for a heads-up', () => {
    expect(heard(() => [call({ soft: true })])).toEqual(['soon 0'])
    expect(heard(() => [call({ urgency: 'soon' })])).toEqual(['soon 0'])
  })

  it('with one sound for two pots that call, and at once for a second pot that begins to', () => {
    expect(heard((sec) => (sec < 7 ? [call()] : [call(), call({}, 'moss')]))).toEqual([
      'now 0',
      'now 7',
      'now 27',
      'now 47'
    ])
  })

  it('with one pulse when it follows at once on an answer in the same pot, and as any other if nobody comes to it', () => {
    const next = call({ key: 'call 2' })
    expect(heard((sec) => (sec < 5 ? [call()] : [next]))).toEqual(['now 0', 'soon 5', 'now 25', 'now 45'])
    expect(heard((sec) => (sec < 5 ? [call()] : [call({ key: 'call 2' }, 'moss')]))[1]).toBe('now 5')
    expect(heard((sec) => (sec < 5 ? [call()] : [call(), next]))[1]).toBe('now 5')
    expect(heard((sec) => (sec < 5 ? [call()] : sec < 9 ? [] : [next]))[1]).toBe('now 9')
  })

  it('at once when the same call comes again after it was answered', () => {
    expect(heard((sec) => (sec < 3 || sec >= 6 ? [call()] : []))).toEqual(['now 0', 'now 6', 'now 26', 'now 46'])
  })
})

/** A rung on a table: a player that writes down, a clock moved by hand, one pot that is watched or not. */
function onTable(level: number | null = 0.7): {
  rung: Rung
  player: MemoryPlayer
  at: { ms: number; watched: boolean; listening: boolean }
} {
  const player = memoryPlayer()
  const at = { ms: 0, watched: true, listening: false }
  const rung = soundRung({
    player,
    level: () => level,
    monoMs: () => at.ms,
    untilMs: (atMs) => atMs - at.ms,
    watched: () => at.watched,
    listening: () => at.listening
  })
  return { rung, player, at }
}

describe('the rung of sound', () => {
  it('says in words that it is locked, and sounds a standing call as soon as a touch unlocks it', async () => {
    const { rung, player } = onTable()
    rung.raise([call()])
    expect(player.played).toEqual([])
    expect(rung.works()).toBe(false)
    expect(rung.lamp()).toMatchObject({ ok: false, say: expect.stringContaining('tap') })
    rung.lamp()?.tap?.()
    await Promise.resolve()
    rung.raise([call()])
    expect(player.played).toEqual([{ pattern: 'now', level: 0.7 }])
    expect(rung.works()).toBe(true)
    expect(rung.lamp()).toEqual({ ok: true, say: 'Sound ready', tap: null })
  })

  it('keeps silent where the dyer turned sound off, and the lamp says so', async () => {
    const { rung, player } = onTable(null)
    await player.unlock()
    rung.raise([call()])
    rung.ahead?.([call({ atMs: 60_000 })])
    expect([player.played, player.scheduled, player.beds]).toEqual([[], [], [false]])
    expect(rung.lamp()).toMatchObject({ ok: false, say: expect.stringContaining('off') })
  })

  it('grows as loud as it goes once what is at stake is two minutes late', async () => {
    const { rung, player, at } = onTable(0.4)
    await player.unlock()
    const late = (lateMs: number): RungAlert => call({ urgency: 'late', escalates: true, lateMs })
    rung.raise([late(60_000)])
    at.ms = 8_000
    rung.raise([late(2 * 60_000)])
    expect(player.played.map(({ level }) => level)).toEqual([0.4, 1])
  })

  it('leaves five seconds between two late calls where somebody answers by whistles', async () => {
    const { rung, player, at } = onTable()
    await player.unlock()
    at.listening = true
    const late = call({ urgency: 'late', escalates: true, lateMs: 3 * 60_000 })
    const soundedAt: number[] = []
    for (at.ms = 0; at.ms < 30_000; at.ms += 250) {
      const before = player.played.length
      rung.raise([late])
      if (player.played.length > before) soundedAt.push(at.ms)
    }
    // The late pattern takes 4.45 s.
    expect(soundedAt).toEqual([0, 9_500, 19_000, 28_500])
  })

  it('lays the bed only while a pot is watched', async () => {
    const { rung, player, at } = onTable()
    await player.unlock()
    rung.ahead?.([])
    at.watched = false
    rung.ahead?.([])
    expect(player.beds).toEqual([true, false])
  })
})

describe('sounds ordered ahead', () => {
  const coming = call({ atMs: 60_000 })

  it('are ordered once, and anew when their hour moves or the clock of the sound stood still', async () => {
    const { rung, player, at } = onTable()
    await player.unlock()
    rung.ahead?.([coming])
    at.ms = 10_000
    rung.ahead?.([coming])
    expect(player.scheduled).toEqual([[{ key: 'plum call 1', inMs: 60_000, pattern: 'now' }]])
    rung.ahead?.([call({ atMs: 90_000 })])
    expect(player.scheduled.at(-1)).toEqual([{ key: 'plum call 1', inMs: 80_000, pattern: 'now' }])
    at.ms = 20_000
    player.drift(-5_000)
    rung.ahead?.([call({ atMs: 90_000 })])
    expect(player.scheduled.at(-1)).toEqual([{ key: 'plum call 1', inMs: 70_000, pattern: 'now' }])
    rung.ahead?.([])
    expect(player.scheduled).toHaveLength(4)
  })

  it('are not sounded once more by the look that finds them due', async () => {
    const { rung, player, at } = onTable()
    await player.unlock()
    rung.ahead?.([coming])
    at.ms = 60_100
    player.begin('plum call 1')
    rung.raise([coming])
    expect(player.played).toEqual([])
    at.ms = 80_100
    rung.raise([coming])
    expect(player.played).toHaveLength(1)
  })
})

describe('the death watch', () => {
  it('finds a clock that stands though it is called running, but not one that nobody looked at', () => {
    const watch = deathWatch()
    const clock = { state: 'running', currentTime: 1 }
    expect(watch.isDead(clock, 0)).toBe(false)
    expect(watch.isDead(clock, 1_000)).toBe(false)
    expect(watch.isDead(clock, 2_000)).toBe(true)
    clock.currentTime = 2
    expect(watch.isDead(clock, 3_000)).toBe(false)
    // Frozen for an hour, both stood still; it has a moment to come back.
    expect(watch.isDead(clock, 3_600_000)).toBe(false)
    expect(watch.isDead({ ...clock, state: 'suspended' }, 3_602_000)).toBe(false)
    expect(watch.isDead({ ...clock, state: 'closed' }, 3_603_000)).toBe(true)
  })
})
