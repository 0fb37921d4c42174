import { describe, expect, it } from 'vitest'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { commonMoments, momentTimes } from '../../../src/core/record/align.ts'
import { compareRecords } from '../../../src/core/record/compare.ts'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { repeatability } from '../../../src/core/record/repeatability.ts'
import { latestByBatch } from '../../../src/core/record/skein-verdict.ts'
import type { Judgement } from '../../../src/core/record/swatch.ts'
import { type Bench, T0 } from '../pot/given.ts'
import { MIN } from '../pot/programmes.ts'
import { judgement, splitEvent } from './judged-skein.ts'
import { mossFinished, mossRun } from './moss.ts'

type Started = Extract<PotEvent, { type: 'PotStarted' }>

function record(bench: Bench, change: (start: Started) => void = () => undefined): BatchRecord {
  const entries = structuredClone(bench.entries)
  const [first] = entries
  if (first?.event.type !== 'PotStarted') throw new Error('no start')
  change(first.event)
  const read = recordOf(entries)
  if (!read) throw new Error('no record')
  return read
}

const plain = (text: string | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const differing = (rows: { same: boolean; label: string }[]): string[] =>
  rows.filter((row) => !row.same).map((row) => row.label)

describe('the starting conditions of two batches', () => {
  it('are the same where nothing differs, whatever the batches are called', () => {
    const other = record(mossFinished(), ({ pot }) => {
      pot.batchName = '2031-06-15 Moss again'
      pot.potId = 'pot-b'
    })
    expect(compareRecords([record(mossFinished()), other]).startDiffers).toEqual([])
  })

  it.each<[string, (start: Started) => void, string]>([
    ['fibre', ({ pot }) => (pot.fibre = 'silk'), 'Fibre'],
    ['bath', ({ pot }) => (pot.bath.unknownDyeLeft = true), 'Bath'],
    ['yarn', ({ pot }) => (pot.parentBatchId = 'pot-z'), 'Yarn'],
    ['protocol text', ({ protocol }) => (protocol.text = 'strandline: 1 # mine'), 'Its text'],
    ['room', ({ programme }) => (programme.roomC += 4), 'Room'],
    ['burner', ({ pot }) => (pot.burner = 'back'), 'Burner']
  ])('differ by %s, and by that alone', (_, change, label) => {
    const { startDiffers } = compareRecords([record(mossFinished()), record(mossFinished(), change)])
    expect(startDiffers.map((row) => row.label)).toEqual([label])
  })

  it('are told apart where the figures only look alike', () => {
    const heavier = record(mossFinished(), ({ pot }) => {
      for (const skein of pot.skeins) skein.massG = 100.000001
    })
    const [row] = compareRecords([record(mossFinished()), heavier]).startDiffers
    expect(row?.label).toBe('Yarn, dry')
    expect(new Set(row?.values).size).toBe(2)
  })

  it('differ where one batch of three differs', () => {
    const odd = record(mossFinished(), ({ pot }) => (pot.fibre = 'silk'))
    const { startDiffers } = compareRecords([record(mossFinished()), record(mossFinished()), odd])
    expect(startDiffers[0]?.values).toEqual(['wool', 'wool', 'silk'])
  })
})

describe('the verdicts on their skeins', () => {
  const two = (): BatchRecord[] => [
    record(mossFinished()),
    record(mossFinished(), ({ pot }) => {
      pot.potId = 'pot-b'
    })
  ]
  const rowOf = (...found: Judgement['found'][]) =>
    compareRecords(two(), undefined, latestByBatch(found.map((one) => judgement(one)))).result.find(
      ({ label }) => label === 'Verdict on the skein'
    )

  it('differ by the word, by the way it turned and by the band, and stand first of what came of it', () => {
    const other = splitEvent('pot-b', { turn: { word: 'yellower', fromBand: 5 } })
    const row = rowOf(splitEvent('pot-a'), other)
    expect(row).toMatchObject({ same: false })
    expect(row?.values).toEqual(['Split. Turns yellower from band 4', 'Split. Turns yellower from band 5'])
    expect(rowOf(splitEvent('pot-a'), splitEvent('pot-b'))?.same).toBe(true)
    const all = compareRecords(two(), undefined, latestByBatch([judgement(other)]))
    expect(all.result[0]?.values).toEqual(['–', 'Split. Turns yellower from band 5'])
  })

  it('are no row where no skein was judged', () => {
    expect(rowOf()).toBeUndefined()
  })
})

describe('the steps and results of two batches', () => {
  it('of a batch and itself do not differ', () => {
    const { steps, result } = compareRecords([record(mossFinished()), record(mossFinished())])
    expect(steps.length).toBeGreaterThan(5)
    expect([...differing(steps), ...differing(result)]).toEqual([])
  })

  it('differ in what came later, took longer, and was added', () => {
    const slow = mossFinished()
    const quick = record(mossFinished())
    // The same pot, but the second acid came on its call and was measured exactly.
    const entries = structuredClone(slow.entries)
    for (const { event } of entries) {
      if (event.type === 'Dosed' && event.path === 'A1') event.added.value = 30
      if (event.type === 'StepClosed' && event.path === 'A2') event.lateMs = 0
    }
    const other = recordOf(entries)
    if (!other) throw new Error('no record')
    const { steps } = compareRecords([quick, other])
    expect(differing(steps)).toEqual(['Acid 1: added', 'Acid 2: how it went'])
    const added = steps.find((row) => row.label === 'Acid 1: added')
    expect(added?.values.map(plain)).toEqual(['33 mL of vinegar', '30 mL of vinegar'])
  })

  it('differ in steps that only one of them has, and in how they ended', () => {
    const { steps, result } = compareRecords([record(mossFinished()), record(mossRun())])
    expect(differing(steps)).toContain('Cup: took')
    expect(differing(result)).toContain('Ended')
  })

  it('tell results told after the fact', () => {
    const rinsed = mossFinished()
    rinsed.do({ type: 'TellResult', what: 'rinses', own: false, value: { kind: 'number', value: 3, unit: '' } })
    const { result } = compareRecords([record(mossFinished()), record(rinsed)])
    expect(result.find((row) => row.label === 'Rinses')?.values).toEqual(['–', '3'])
  })

  it('of different protocols meet by their labels', () => {
    const other = record(mossFinished(), ({ protocol }) => (protocol.text = 'another'))
    const { steps } = compareRecords([record(mossFinished()), other])
    expect(differing(steps)).toEqual([])
  })
})

describe('batches laid along one another', () => {
  const late = (): BatchRecord => {
    const shifted = structuredClone(mossFinished().entries)
    for (const entry of shifted) entry.atMs += 60 * MIN
    const read = recordOf(shifted)
    if (!read) throw new Error('no record')
    return read
  }

  it('have the start and the steps that were done in all of them', () => {
    const moments = commonMoments([record(mossFinished()), record(mossRun())])
    expect(moments[0]).toEqual({ key: '', label: 'the start' })
    expect(moments.map(({ label }) => label)).toContain('All in')
    expect(moments.map(({ label }) => label)).not.toContain('Cup')
  })

  it('are aligned where that moment was in each', () => {
    const records = [record(mossFinished()), late()]
    expect(momentTimes(records, 'enter')).toEqual([T0 + 34 * MIN, T0 + 94 * MIN])
    expect(momentTimes(records, '')).toEqual([T0, T0 + 60 * MIN])
    expect(momentTimes(records, 'nowhere')).toEqual([null, null])
  })
})

describe('the repeatability of a set', () => {
  it('spreads times, amounts and lateness by step', () => {
    const careful = structuredClone(mossFinished().entries)
    for (const { event } of careful) {
      if (event.type === 'Dosed' && event.path === 'A1') event.added.value = 30
      if (event.type === 'StepClosed' && event.path === 'A2') event.lateMs = 0
    }
    const set = [record(mossFinished()), record(mossFinished()), recordOf(careful) as BatchRecord]
    const { steps, batches, sameText } = repeatability(set)
    expect({ batches, sameText }).toEqual({ batches: 3, sameText: true })
    const acid1 = steps.find(({ key }) => key === 'A1')
    expect(acid1?.added).toEqual({ count: 3, least: 30, median: 33, most: 33, unit: 'mL', of: 'vinegar' })
    const acid2 = steps.find(({ key }) => key === 'A2')
    expect(acid2).toMatchObject({ done: 3, lateIn: 2, usuallyLate: true, lateMs: { least: 0, median: 5 * MIN } })
    expect(steps.find(({ key }) => key === 'warm')?.usuallyLate).toBe(false)
  })

  it('calls nothing usual that was seen twice only, or in half of the batches', () => {
    const onTime = structuredClone(mossFinished().entries)
    for (const { event } of onTime) if (event.type === 'StepClosed') event.lateMs = 0
    const punctual = recordOf(onTime) as BatchRecord
    const late = record(mossFinished())
    const usual = (set: BatchRecord[]): boolean => repeatability(set).steps.some(({ usuallyLate }) => usuallyLate)
    expect(usual([late, late])).toBe(false)
    expect(usual([late, late, punctual, punctual])).toBe(false)
    expect(usual([late, late, late, punctual])).toBe(true)
  })
})
