// A small part of the corpus, of the half that nothing was tuned on. `npm run bench:whistle` measures the whole.
import { describe, expect, it } from 'vitest'
import { alwaysThere, type Kind, piece } from './kinds.ts'
import { mostEvents } from './likely.ts'
import { count, groundsOf, hear, mixed, noHits } from './measure.ts'

/** Each kind has whistles of its own. */
const heardOver = (kind: Kind, db: number, whistles: number) => {
  const first = 100 * alwaysThere.indexOf(kind)
  const grounds = groundsOf(kind, 'held-out', 1)
  let found = noHits()
  for (let nth = first; nth < first + whistles; nth++) found = count(found, mixed(grounds, 'held-out', nth, db))
  return found
}

describe('whistles made up by a script, seeds 700000000 on', () => {
  const found = alwaysThere.map((kind) => ({ name: kind.name, ...heardOver(kind, 10, 20) }))

  // A kettle and music are the hardest: they sound in the band of whistles.
  it.each(found)('are heard over $name, 10 dB under them: 15 of 20, and none the wrong way round', ({ hit, wrong }) => {
    expect(hit).toBeGreaterThanOrEqual(15)
    expect(wrong).toBe(0)
  })

  it('are heard over all of these together: 150 of 160', () => {
    expect(found.reduce((sum, { hit }) => sum + hit, 0)).toBeGreaterThanOrEqual(150)
  })

  it('are heard less and less the louder the sound is', () => {
    const fan = alwaysThere.find(({ name }) => name === 'fan') as Kind
    const [quiet, loud] = [20, -20].map((db) => heardOver(fan, db, 20).hit)
    expect(quiet).toBeGreaterThanOrEqual(18)
    expect(loud).toBeLessThanOrEqual(5)
  })
})

it.each(alwaysThere)('a minute of $name holds no whistle (seed 500000000 and on)', (kind) => {
  expect(hear(piece(kind, 'held-out', 0, 60))).toEqual([])
})

// Upper 5 % points of chi-square for 2, 4, 6 and 8 degrees of freedom are 5.991, 9.488, 12.592 and 15.507 (NIST/SEMATECH
// e-Handbook of Statistical Methods, table 1.3.6.7.4, from memory); half of each is the limit for 0, 1, 2 and 3 events.
it.each([
  [0, 5.991],
  [1, 9.488],
  [2, 12.592],
  [3, 15.507]
])('after %i events the true rate may be as high as half of chi-square %f', (events, chiSquare) => {
  expect(mostEvents(events)).toBeCloseTo(chiSquare / 2, 3)
})
