import { describe, expect, it } from 'vitest'
import { mergeKept } from '../../../src/core/backup/merge-kept.ts'
import { namedMedia } from '../../../src/core/backup/named-media.ts'
import { backupDue } from '../../../src/core/backup/reminder.ts'
import { jpeg, letGo, photo } from '../../shell/entries.ts'

const DAY = 24 * 60 * 60_000

describe('small kept things', () => {
  const draft = { id: 'a', text: 'theirs' }
  it('that are new come in, those of the device never do', () => {
    expect(mergeKept(undefined, { key: 'draft/a', value: draft })).toEqual({
      kind: 'put',
      key: 'draft/a',
      value: draft
    })
    for (const key of ['writer', 'device-check', 'backup/last']) {
      expect(mergeKept(undefined, { key, value: 1 })).toEqual({ kind: 'as-here' })
    }
  })

  it('of one name and the same words are one, whatever the order of their fields', () => {
    expect(mergeKept({ text: 'theirs', id: 'a' }, { key: 'draft/a', value: draft })).toEqual({ kind: 'same' })
  })

  it('that were written differ: theirs comes under its own words, a version under its own protocol', () => {
    const beside = mergeKept({ id: 'a', text: 'ours' }, { key: 'draft/a', value: draft })
    expect(beside).toMatchObject({ kind: 'put', key: expect.stringMatching(/^draft\/a-[0-9a-f]{8}$/) })
    if (beside.kind === 'put') expect(beside.value).toEqual({ text: 'theirs', id: beside.key.slice('draft/'.length) })
    const version = mergeKept({ id: 'p', text: 'ours' }, { key: 'version/p/1-x', value: { id: 'p', text: 'theirs' } })
    expect(version).toMatchObject({ key: expect.stringMatching(/^version\/p\/1-x-/), value: { id: 'p' } })
    expect(mergeKept({ theme: 'dark' }, { key: 'settings', value: { theme: 'light' } })).toEqual({ kind: 'as-here' })
  })
})

describe('which bytes are wanted', () => {
  const shot = jpeg(1)
  it('follows from pairs of entries, in whatever order they are given', () => {
    const [noted, gone, again] = [photo('1', 1, shot), letGo('1', 2, shot), photo('1', 3, shot)]
    expect(namedMedia([noted]).standing).toEqual(new Set([shot.sha256]))
    for (const entries of [
      [noted, gone],
      [gone, noted]
    ]) {
      expect(namedMedia(entries)).toEqual({ standing: new Set(), gone: new Set([shot.sha256]) })
    }
    expect(namedMedia([again, gone, noted]).standing).toEqual(new Set([shot.sha256]))
  })

  it('of two devices goes by the time of writing', () => {
    const noted = { ...photo('1', 1, shot), writerId: 'w2', recordedAtMs: 5000 }
    expect(namedMedia([{ ...letGo('1', 9, shot), recordedAtMs: 4999 }, noted]).standing.size).toBe(1)
    expect(namedMedia([{ ...letGo('1', 1, shot), recordedAtMs: 5000 }, noted]).standing.size).toBe(0)
  })
})

describe('the reminder', () => {
  const facts = { lastMs: 100 * DAY, putOffMs: null, firstNewMs: 101 * DAY, nowMs: 114 * DAY }
  it('comes a fortnight after the last backup where there are new batches', () => {
    expect(backupDue(facts)).toBe(14)
    expect(backupDue({ ...facts, nowMs: facts.nowMs - 1 })).toBeNull()
    expect(backupDue({ ...facts, firstNewMs: null, nowMs: 900 * DAY })).toBeNull()
  })

  it('without any backup counts from the first batch', () => {
    expect(backupDue({ ...facts, lastMs: null })).toBeNull()
    expect(backupDue({ ...facts, lastMs: null, nowMs: 120 * DAY })).toBe(19)
  })

  it('that was put off comes again in a week', () => {
    expect(backupDue({ ...facts, putOffMs: 114 * DAY, nowMs: 120 * DAY })).toBeNull()
    expect(backupDue({ ...facts, putOffMs: 114 * DAY, nowMs: 121 * DAY })).toBe(21)
  })
})
