import { describe, expect, it } from 'vitest'
import type { Peak } from '../../../src/shell/whistle/peaks.ts'
import { createTracks, type Track } from '../../../src/shell/whistle/tracks.ts'

const peak = (semitone: number, power = 1): Peak => ({ semitone, power, contrastDb: 20, share: 0.9 })

/** Follows one list of peaks a frame, then silence; what ended, in order. */
function follow(frames: Peak[][]): Track[] {
  const tracks = createTracks()
  const silence = Array.from({ length: 20 }, (): Peak[] => [])
  return [...frames, ...silence].flatMap((peaks, frame) => tracks.follow(frame, peaks))
}

const glide = (count: number, power = 1): Peak[][] =>
  Array.from({ length: count }, (_, nth) => [peak(120 + 0.2 * nth, power)])
const lengths = (ended: Track[]): number[] => ended.map(({ points }) => points.length)

describe('a tone', () => {
  it('is followed up, and through four frames in which it is drowned', () => {
    const frames = glide(40).map((peaks, nth) => (nth >= 20 && nth < 24 ? [] : peaks))
    expect(lengths(follow(frames))).toEqual([36])
  })

  it('broken by an echo that pulls it aside is joined again', () => {
    // Just out of its own reach, so that the second half is a track of its own when the first is given up.
    const broken = glide(40).map((peaks, nth): Peak[] => (nth >= 20 ? [peak(120 + 0.2 * nth + 1.19)] : peaks))
    expect(lengths(follow(broken))).toEqual([40])
  })

  it('that is far off or far fainter is not joined', () => {
    const cut = (aside: number, power: number): Peak[][] =>
      glide(40).map((peaks, nth): Peak[] => (nth >= 20 ? [peak(120 + 0.2 * nth + aside, power)] : peaks))
    expect(lengths(follow(cut(3, 1)))).toEqual([20, 20])
    expect(lengths(follow(cut(1.19, 0.002)))).toEqual([20, 20])
  })

  it('that goes on at its place but much louder is a new one', () => {
    const ring = Array.from({ length: 60 }, (): Peak[] => [peak(120, 0.05)])
    const ended = follow([...ring, ...glide(40)])
    expect(lengths(ended)).toEqual([60, 40])
  })

  it('that runs into a fainter one, which stays where it is, is over there', () => {
    const end = 120 + 0.2 * 39
    const goneOn = (power: number, step = 0): Peak[][] =>
      Array.from({ length: 40 }, (_, nth) => [peak(end + step * nth, power)])
    const [whistle, ...rest] = lengths(follow([...glide(40), ...goneOn(0.2)]))
    expect(rest).toHaveLength(1)
    // To a few frames: the end of the glide is as still as what it runs into.
    expect(Math.abs((whistle ?? 0) - 40)).toBeLessThan(5)
    // Held a little softer, or going on softer: still the same whistle.
    expect(lengths(follow([...glide(40), ...goneOn(0.5)]))).toEqual([80])
    expect(lengths(follow([...glide(40), ...goneOn(0.2, 0.1)]))).toEqual([80])
    // A tone that only grows fainter is no glide that ran into another.
    expect(lengths(follow([...Array.from({ length: 40 }, (): Peak[] => [peak(end)]), ...goneOn(0.2)]))).toEqual([80])
  })

  it('that runs into a tone too long for a whistle leaves it marked so', () => {
    const long = Array.from({ length: 300 }, (): Peak[] => [peak(120)])
    const ended = follow([...long, ...glide(40), ...Array.from({ length: 40 }, (): Peak[] => [peak(127.8, 0.1)])])
    expect(ended.map((track) => track.long)).toEqual([true, true])
  })

  it('longer than any whistle is followed on and marked', () => {
    const [track, ...more] = follow(Array.from({ length: 600 }, (): Peak[] => [peak(120)]))
    expect([track?.long, more.length]).toEqual([true, 0])
  })
})
