import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/pot/entry.ts'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import { readEntries } from '../../../src/core/pot/read-entry.ts'
import { sealEntry } from '../../../src/core/pot/write-entry.ts'
import version1 from './data/journal-v1.json' with { type: 'json' }

const note = (seq: number, text = `note ${seq}`): Entry<PotEvent> =>
  sealEntry<PotEvent>({
    v: 2,
    streamId: 'pot/1',
    writerId: 'w1',
    seq,
    after: seq === 1 ? null : { writerId: 'w1', seq: seq - 1 },
    commandId: `c${seq}`,
    atMs: 1_900_000_000_000 + seq,
    recordedAtMs: 1_900_000_000_000 + seq,
    bootId: 'b1',
    monoMs: seq,
    tzOffsetMin: 120,
    by: { kind: 'person', name: null, via: 'tap' },
    event: { type: 'NoteWritten', text, path: null }
  })

/** An entry as another program might write it: right checksum, whatever is inside. */
const resealed = (change: Record<string, unknown>): unknown => {
  const { crc: _, ...rest } = { ...note(1), ...change }
  return sealEntry(rest as Omit<Entry<unknown>, 'crc'>)
}

describe('reading a journal back', () => {
  it('gives back what was written', () => {
    const written = [note(1), note(2, '82 °C, "half" \\ 水'), note(3)]
    expect(readEntries(JSON.parse(JSON.stringify(written)))).toEqual({ entries: written, damaged: [], unknown: false })
  })

  it('holds the checksum over a copy that puts the fields in another order', () => {
    const turned = Object.fromEntries(Object.entries(note(1)).reverse())
    expect(readEntries([turned])).toMatchObject({ damaged: [], entries: [{ seq: 1 }] })
  })

  it('tells a changed entry, says which, and reads the others', () => {
    const bad = { ...note(2), event: { type: 'NoteWritten', text: 'changed', path: null } }
    const read = readEntries([note(1), bad, note(3)])
    expect(read.entries.map((entry) => entry.seq)).toEqual([1, 3])
    expect(read.damaged).toEqual([{ index: 1, why: expect.stringContaining('checksum') }])
  })

  it('tells an entry that is missing, and one that is there twice', () => {
    expect(readEntries([note(1), note(3)]).damaged).toEqual([{ index: 1, why: 'entry 2 is missing before this one' }])
    expect(readEntries([note(4)]).damaged).toEqual([{ index: 0, why: 'entries 1 to 3 are missing before this one' }])
    const twice = readEntries([note(1), note(1), note(2)])
    expect(twice.damaged).toEqual([{ index: 1, why: 'entry 1 is there twice' }])
    expect(twice.entries.map((entry) => entry.seq)).toEqual([1, 2])
  })

  it('takes what is no entry at all as damaged, whatever it is', () => {
    for (const junk of [null, 7, 'text', [], {}, { v: 0 }, { v: 1.5, crc: '' }, { v: 2, crc: 4 }]) {
      expect(readEntries([junk]).damaged, JSON.stringify(junk)).toHaveLength(1)
    }
    for (const wrong of [
      { atMs: 'noon' },
      { by: null },
      { event: null },
      { event: {} },
      { after: 3 },
      { streamId: 1 }
    ]) {
      expect(readEntries([resealed(wrong)]).damaged, JSON.stringify(wrong)).toHaveLength(1)
    }
  })

  it('marks a newer version, or an event it has no word for, as unknown and leaves it out', () => {
    expect(readEntries([resealed({ v: 3, event: { type: 'Later' } })])).toEqual({
      entries: [],
      damaged: [],
      unknown: true
    })
    expect(readEntries([resealed({ event: { type: 'Later' } })])).toEqual({ entries: [], damaged: [], unknown: true })
    expect(readEntries([resealed({ event: { type: 'toString' } })]).unknown).toBe(true)
  })
})

describe('a journal of an earlier version', () => {
  const stored = structuredClone(version1) as Record<string, unknown>[]

  it('opens to the state it had, with what was added, when, and by whom', () => {
    const { entries, damaged, unknown } = readEntries(stored)
    expect({ damaged, unknown, count: entries.length }).toEqual({ damaged: [], unknown: false, count: stored.length })
    const state = fold(entries)
    if (state.status !== 'running') throw new Error(`the pot is ${state.status}`)
    expect(state.doses).toEqual([
      {
        path: 'acid1',
        of: 'vinegar',
        planned: { value: 30, unit: 'mL', of: 'vinegar', asEntered: '30 mL' },
        added: { value: 28, unit: 'mL', of: 'vinegar', asEntered: '28 mL' },
        atMs: Date.UTC(2031, 5, 14, 9, 12),
        fromPotId: null
      }
    ])
    expect(state.active.map(({ path, dueAtMs }) => [path, dueAtMs])).toEqual([['hold1', Date.UTC(2031, 5, 14, 9, 32)]])
    const whos = entries.map(({ by }) => (by.kind === 'person' ? by.name : by.kind))
    expect(new Set(whos)).toEqual(new Set(['demo dyer', 'clock']))
  })

  it('comes out as entries of today, sealed as such, that read again unchanged', () => {
    const { entries } = readEntries(stored)
    expect(entries.every(({ v, atMs, recordedAtMs }) => v === 2 && recordedAtMs === atMs)).toBe(true)
    expect(readEntries(entries)).toEqual({ entries, damaged: [], unknown: false })
  })

  it('is checked by its own checksum before anything is made of it', () => {
    const changed = stored.map((entry, at) => (at === 2 ? { ...entry, timeMs: 0 } : entry))
    expect(readEntries(changed).damaged).toEqual([{ index: 2, why: expect.stringContaining('checksum') }])
  })
})

describe('writing an entry', () => {
  it('keeps only what JSON can carry, so that the stored and the exported entry are one', () => {
    const open = { ...note(1), event: { type: 'NoteWritten', text: 'a', path: null, extra: undefined } as PotEvent }
    const sealed = sealEntry<PotEvent>({ ...open, crc: undefined } as Omit<Entry<PotEvent>, 'crc'>)
    expect(Object.keys(sealed.event)).not.toContain('extra')
    expect(readEntries([sealed]).damaged).toEqual([])
  })
})
