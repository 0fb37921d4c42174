import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/pot/entry.ts'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { type SeriesTab, seriesSay, seriesTabs, tabSay } from '../../../src/core/record/series.ts'
import { seriesDoubts } from '../../../src/core/record/series-doubts.ts'
import { dyed, type Wanted } from '../../browser/stage/kept-batches.ts'

type Started = Extract<PotEvent, { type: 'PotStarted' }>
type Change = (entries: Entry<PotEvent>[], start: Started) => void

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

/** Six jars of 10 g by the built-in protocol, as the rehearsal's person dyes them. */
function tabsOf(change: Change = () => undefined, more: Partial<Wanted> = {}): SeriesTab[] {
  const given = {
    potId: 'series',
    protocol: 'dilution-series',
    startMs: Date.UTC(2031, 5, 12, 8),
    goods: '60',
    ...more
  }
  const entries = structuredClone(dyed(given).entries) as Entry<PotEvent>[]
  const start = entries[0]?.event
  if (start?.type !== 'PotStarted') throw new Error('no start')
  change(entries, start)
  const record = recordOf(entries)
  if (!record) throw new Error('no record')
  return seriesTabs(record)
}
const depths = (tabs: readonly SeriesTab[]): (number | null)[] => tabs.map(({ depthPercent }) => depthPercent)

/** The stock that went into a jar. */
function doseOf(entries: Entry<PotEvent>[], jar: number, of: string) {
  const found = entries.find(
    ({ event }) => event.type === 'Dosed' && event.of === of && event.path?.includes(`jars[${jar}]`)
  )
  if (found?.event.type !== 'Dosed') throw new Error(`no ${of} in jar ${jar}`)
  return found.event
}

describe('the tabs of a dilution series', () => {
  it('are as deep as what went into their jars, as a syringe measures it', () => {
    // 10 g tabs: 20, 10, 5, 2.5 mL of 1 %, then 13 (for 12.5) and 6.3 (for 6.25) mL of 0.1 %.
    const tabs = tabsOf()
    expect(tabs.map(({ jar }) => jar)).toEqual(['J1', 'J2', 'J3', 'J4', 'J5', 'J6'])
    expect(depths(tabs)).toEqual([2, 1, 0.5, 0.25, 0.13, 0.063])
    expect(tabs.map(({ of }) => of)).toEqual([...Array(4).fill('stock'), 'weak stock', 'weak stock'])
    expect(new Set(tabs.map(({ left }) => left))).toEqual(new Set(['clear']))
  })

  it('follow what was really added, and the strength on the label', () => {
    expect(depths(tabsOf((entries) => (doseOf(entries, 2, 'stock').added.value = 12)))[1]).toBe(1.2)
    const weaker: Change = (_, { programme }) => {
      for (const out of programme.setOut) if (out.material === 'weak') out.percent = 0.2
    }
    expect(depths(tabsOf(weaker)).slice(4)).toEqual([0.26, 0.126])
    const unknown: Change = (_, { programme }) => {
      for (const out of programme.setOut) if (out.material === 'weak') out.percent = null
    }
    expect(depths(tabsOf(unknown)).slice(3)).toEqual([0.25, null, null])
  })

  it('are of the weight of the skein that bears the jar’s name', () => {
    const own: Change = (_, { pot }) => {
      pot.skeins = [
        { tag: 'J1', massG: 20 },
        { tag: 'the rest', massG: 40 }
      ]
    }
    // The other jars share the 60 g.
    expect(depths(tabsOf(own)).slice(0, 2)).toEqual([1, 1])
  })

  it('say how the bath of each jar was left at the last look', () => {
    const tabs = tabsOf((entries) => {
      for (const { event } of entries)
        if (event.type === 'Judged' && event.path?.includes('judged[3]')) event.grade = 'half'
    })
    expect(tabs.map(({ left }) => left)).toEqual(['clear', 'clear', 'half', 'clear', 'clear', 'clear'])
  })

  it('are none where no jar has a dose of its own', () => {
    expect(tabsOf(undefined, { protocol: 'dip-gradient' })).toEqual([])
    expect(tabsOf(undefined, { protocol: 'level-immersion' })).toEqual([])
  })

  it('are told in words', () => {
    const tabs = tabsOf()
    expect(plain(seriesSay({ batchId: 'series', name: '', tabs }))).toBe('6 tabs of 2 to 0.063 % owf')
    expect(plain(tabSay(tabs[3] as SeriesTab))).toBe('J4 0.25 %')
    const unknown = { ...(tabs[0] as SeriesTab), depthPercent: null }
    expect([tabSay(unknown), seriesSay({ batchId: '', name: '', tabs: [unknown] })]).toEqual(['J1', 'one tab'])
  })
})

describe('what speaks against a series as a control', () => {
  const tab = (jar: string, depthPercent: number | null, left: SeriesTab['left'] = 'clear'): SeriesTab => ({
    jar,
    depthPercent,
    of: 'stock',
    left
  })
  const three = [tab('J1', 2), tab('J2', 1, 'trace'), tab('J3', 0.5)]
  const labs = (...ls: number[]) => ls.map((l) => ({ l, a: 0, b: 0 }))
  const same = { series: 'wool', skein: 'Wool ' }

  it('is nothing where all is as it must be', () => {
    expect(seriesDoubts(three, labs(40, 50, 60), same)).toEqual([])
    expect(seriesDoubts(three, [], { series: 'wool', skein: null })).toEqual([])
  })

  it.each<[string, SeriesTab[], { l: number; a: number; b: number }[], { series: string; skein: string }, RegExp]>([
    ['another yarn', three, [], { series: 'nylon', skein: 'wool' }, /of nylon, the skein of wool/],
    ['a bath that was not clear', [tab('J1', 2, 'half'), tab('J2', 1)], [], same, /J1 was left at “half”/],
    ['a bath that nobody judged', [tab('J1', 2, null), tab('J2', 1, null)], [], same, /the bath of J1, J2 was clear/],
    ['a strength that is not known', [tab('J1', null), tab('J2', 1)], [], same, /the stock in J1 was is not known/],
    ['tabs that were mixed up', three, labs(40, 60, 50), same, /J2 had 1 % and is read paler than J3 with 0.5 %/]
  ])('is %s', (_, tabs, read, yarns, say) => {
    const doubts = seriesDoubts(tabs, read, yarns)
    expect(doubts).toHaveLength(1)
    expect(doubts[0]).toMatch(say)
  })

  it('is no order where depths are near one another, or readings are one and the same', () => {
    expect(seriesDoubts([tab('J1', 1.2), tab('J2', 1)], labs(60, 50), same)).toEqual([])
    expect(seriesDoubts(three, labs(50.9, 50, 50), same)).toEqual([])
  })
})
