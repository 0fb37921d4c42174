import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Aside, RawEntry } from '../../../src/core/backup/format.ts'
import { keyOf, mergedStream, mergeStream, newAside, wordsOf } from '../../../src/core/backup/merge.ts'
import { trunkOf } from '../../../src/core/pot/branches.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import type { PotEntry } from '../../../src/session/ports.ts'
import { inOrderOfWriting } from '../../../src/shell/journal/writing-order.ts'
import { note } from '../../shell/entries.ts'

type Journal = { entries: RawEntry[]; aside: Aside[] }

/** One stream merged, as the store does it: the entries, then what was set aside there. */
function merge(ours: Journal, theirs: Journal): Journal {
  const step = mergeStream(ours.entries, theirs.entries)
  const entries = mergedStream(ours.entries, step)
  const coming = [...step.aside, ...theirs.aside]
  return { entries, aside: [...ours.aside, ...newAside(ours.aside, coming, entries)] }
}

/** All that a journal holds under each key, whichever of it stands. */
function variants({ entries, aside }: Journal): string[] {
  return [...entries, ...aside.map(({ entry }) => entry)].map(wordsOf).sort()
}

function standing({ entries }: Journal): string[] {
  return entries.map(wordsOf)
}

const damaged = (entry: PotEntry): PotEntry => ({ ...entry, crc: '00000000' })

/** An entry out of so few that two journals often hold the same one, or another one under its key. */
const entry = fc
  .record({
    writer: fc.constantFrom('w1', 'w2', 'w3'),
    seq: fc.integer({ min: 1, max: 4 }),
    text: fc.constantFrom('a', 'b')
  })
  .map(({ writer, seq, text }) =>
    note('1', seq, { writerId: writer, event: { type: 'NoteWritten', text, path: null } })
  )
const oneEach = (entries: PotEntry[]): Journal => ({
  entries: [...new Map(entries.map((one) => [keyOf(one), one])).values()].sort((a, b) =>
    a.writerId < b.writerId ? -1 : a.writerId > b.writerId ? 1 : a.seq - b.seq
  ),
  aside: []
})
const journal = fc.array(entry, { maxLength: 10 }).map(oneEach)
/** Journals of devices that never wrote two things under one key: what really happens. */
const honest = fc
  .array(entry, { maxLength: 10 })
  .map((entries) => oneEach(entries.map((one) => note('1', one.seq, { writerId: one.writerId }))))
/** The same, and some of what is stored there has rotted. */
const rotted = fc
  .array(fc.tuple(entry, fc.boolean()), { maxLength: 10 })
  .map((all) =>
    oneEach(
      all.map(([{ seq, writerId }, bad]) =>
        bad ? damaged(note('1', seq, { writerId })) : note('1', seq, { writerId })
      )
    )
  )

describe('merging journals', () => {
  it('in whatever order: honest journals come out the same to the byte', () => {
    fc.assert(
      fc.property(honest, honest, honest, (a, b, c) => {
        expect(merge(a, b)).toEqual(merge(b, a))
        expect(merge(merge(a, b), c)).toEqual(merge(a, merge(b, c)))
        expect(merge(a, b).aside).toEqual([])
      })
    )
  })

  it('twice is as good as once', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        const once = merge(a, b)
        expect(merge(once, b)).toEqual(once)
        expect(merge(once, once)).toEqual(once)
        expect(merge(a, a)).toEqual(a)
      })
    )
  })

  it('loses nothing of either and makes up nothing, also where both hold another entry under one key', () => {
    fc.assert(
      fc.property(journal, journal, journal, (a, b, c) => {
        const all = [...new Set([...variants(a), ...variants(b)])].sort()
        expect(variants(merge(a, b))).toEqual(all)
        expect(variants(merge(b, a))).toEqual(all)
        expect(variants(merge(merge(a, b), c))).toEqual(variants(merge(a, merge(b, c))))
        // What stood here stands here.
        expect(standing(merge(a, b))).toEqual(expect.arrayContaining(standing(a)))
      })
    )
  })

  it('puts a whole entry in the place of a damaged one, on both devices the same, and keeps the damaged one aside', () => {
    fc.assert(
      fc.property(rotted, rotted, rotted, (a, b, c) => {
        expect(standing(merge(a, b))).toEqual(standing(merge(b, a)))
        expect(standing(merge(merge(a, b), c))).toEqual(standing(merge(a, merge(b, c))))
        expect(variants(merge(a, b))).toEqual([...new Set([...variants(a), ...variants(b)])].sort())
        expect(merge(a, b).aside.every(({ why }) => why === 'damaged')).toBe(true)
      })
    )
  })

  it('says which of the two a conflict is', () => {
    const [ours, theirs] = [note('1', 1), note('1', 1, { commandId: 'other' })]
    expect(mergeStream([ours], [theirs])).toEqual({
      add: [],
      mend: [],
      same: 0,
      aside: [{ why: 'conflict', entry: theirs }]
    })
    const bad = damaged(theirs)
    expect(mergeStream([ours], [bad]).aside).toEqual([{ why: 'damaged', entry: bad }])
    expect(mergeStream([bad], [ours])).toMatchObject({ add: [], mend: [ours], aside: [{ why: 'damaged', entry: bad }] })
  })
})

describe('a merged journal', () => {
  it('is read the same in whatever order its parts came: order, trunk and state', () => {
    const chain = fc.array(fc.tuple(fc.constantFrom('w1', 'w2', 'w3'), fc.nat(30), fc.nat(3), fc.boolean()), {
      maxLength: 14
    })
    fc.assert(
      fc.property(chain, fc.infiniteStream(fc.boolean()), (steps, halves) => {
        const entries = branched(steps)
        const [mine, other] = [entries.filter(() => halves.next().value), entries]
        const read = (all: RawEntry[]): unknown => {
          const inOrder = inOrderOfWriting(all) as PotEntry[]
          return { trunk: trunkOf(inOrder), state: fold(inOrder) }
        }
        const one = merge({ entries: mine, aside: [] }, { entries: other, aside: [] })
        const two = merge({ entries: other, aside: [] }, { entries: mine, aside: [] })
        expect(read(one.entries)).toEqual(read(two.entries))
      })
    )
  })
})

/** Each new entry follows one that is there: by its own writer's count, after any of those before. */
function branched(steps: [string, number, number, boolean][]): PotEntry[] {
  const made: PotEntry[] = []
  for (const [writerId, recordedAtMs, back, tells] of steps) {
    const seq = made.filter((one) => one.writerId === writerId).length + 1
    const before = made[made.length - 1 - back]
    const after = before ? { writerId: before.writerId, seq: before.seq } : null
    const event = tells
      ? ({ type: 'NoteWritten', text: `${writerId} ${seq}`, path: null } as const)
      : ({ type: 'HeatSet', on: true, level: null } as unknown as PotEntry['event'])
    made.push(note('1', seq, { writerId, after, recordedAtMs, event }))
  }
  return made.sort((a, b) => (a.writerId < b.writerId ? -1 : a.writerId > b.writerId ? 1 : a.seq - b.seq))
}
