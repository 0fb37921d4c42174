// A batch whose jars each hold a tab of its own depth: what a skein is held against. The depths are those that went in.
import { gPerMLOf, owfPercent } from '../chemistry/amounts/formulas.ts'
import { type Grade, grades, type Programme, type Rounds } from '../protocol/model.ts'
import { vesselGoodsG } from '../protocol/programme/vessel-goods.ts'
import { sequenceOf, stepsOf } from '../protocol/tree.ts'
import { showNumber, showPercent } from '../quantity/index.ts'
import type { BatchRecord } from './record.ts'

export type SeriesTab = {
  /** "J1": the jar's name in the protocol. */
  jar: string
  /** Of all dyes together, % owf, by what went in and the strength on the label; null: some strength is not known. */
  depthPercent: number | null
  /** "stock Y, stock R": what it was dyed with. */
  of: string
  /** What was left in the jar at the last look; null: nobody judged it. */
  left: Grade | null
}

/** A series as it stood when a skein was judged by it. `tabs`: those that lay beside the skein, in the order of the marks. */
export type SeriesLink = { batchId: string; name: string; tabs: SeriesTab[] }

/** Fewer are no series: a control wants three depths and more. */
const TABS_LEAST = 3

/** The tabs of a batch in the order of its jars; none where it is no series. A jar is one that the protocol goes through by
 * `for each: jar` (or `skein`) and that a stock goes into. */
export function seriesTabs(record: BatchRecord): SeriesTab[] {
  const { programme, substrate, judgements } = record
  const jarAt = jarsOf(programme)
  const jars = new Map<string, Jar>()
  for (const jar of jarAt.values()) if (!jars.has(jar.key)) jars.set(jar.key, jar)
  const goods = { skeins: substrate.skeins, massG: substrate.goodsMassG }
  const tabs = [...jars.values()].flatMap(({ key, item, index, count }): SeriesTab[] => {
    const doses = dosesIn(record, (path) => jarAt.get(path)?.key === key)
    if (doses.length === 0) return []
    const grams = doses.map(({ dyeG }) => dyeG).reduce(sumKnown, 0)
    const massG = vesselGoodsG(item, index, count, goods)
    const last = judgements.findLast(({ path }) => path !== null && jarAt.get(path)?.key === key)
    return [
      {
        jar: item,
        depthPercent: grams === null ? null : rounded(owfPercent(grams, massG)),
        of: [...new Set(doses.map(({ of }) => of))].join(', '),
        left: grades.find((grade) => grade === last?.grade) ?? null
      }
    ]
  })
  return tabs.length < TABS_LEAST ? [] : tabs
}

type Jar = { key: string; item: string; index: number; count: number }

/** The jar of each step that is inside one: the innermost. */
function jarsOf(programme: Programme): Map<string, Jar> {
  const found = new Map<string, Jar>()
  for (const { path } of stepsOf(programme)) {
    let { owner } = sequenceOf(programme, path)
    while (owner !== null && !found.has(path)) {
      const jar = owner.kind === 'round' ? jarOf(owner.rounds, owner.round - 1) : null
      if (jar) found.set(path, jar)
      owner = sequenceOf(programme, owner.kind === 'round' ? owner.rounds.path : owner.of.path).owner
    }
  }
  return found
}

/** Rounds are called "jar J1", or "jar 1 of 6" where they are counted. */
function jarOf({ kind, rounds }: Rounds, index: number): Jar | null {
  const [, name, item] = /^(jar|skein) (.+)$/.exec(rounds[index]?.label ?? '') ?? []
  if (kind !== 'each' || !name || !item) return null
  const plain = item.replace(/^(\d+) of \d+$/, '$1')
  return { key: `${name} ${plain}`, item: plain, index, count: rounds.length }
}

type Dose = { of: string; dyeG: number | null }

/** What really went into it of dye. */
function dosesIn({ programme, amounts }: BatchRecord, inside: (path: string) => boolean): Dose[] {
  return amounts.flatMap(({ path, fate, of, added }): Dose[] => {
    if (fate !== 'added' || path === null || added === null || !inside(path)) return []
    const portion = programme.setOut.find(({ kind, paths }) => kind === 'stock' && paths.includes(path))
    if (!portion || added.value <= 0) return []
    const { percent } = portion
    if (added.unit === 'g') return [{ of, dyeG: added.value }]
    return [{ of, dyeG: percent === null ? null : added.value * gPerMLOf(percent, null) }]
  })
}

const sumKnown = (sum: number | null, next: number | null): number | null =>
  sum === null || next === null ? null : sum + next

/** Four figures: a dose is measured to no more. */
const rounded = (value: number): number => Number(value.toPrecision(4))

/** "J1 2 %", or "J1" where its depth is not known. */
export function tabSay({ jar, depthPercent }: SeriesTab): string {
  return depthPercent === null ? jar : `${jar} ${showPercent(depthPercent)}`
}

/** "6 tabs of 2 to 0.0625 % owf" */
export function seriesSay({ tabs }: SeriesLink): string {
  const depths = tabs.flatMap(({ depthPercent }) => depthPercent ?? [])
  const count = tabs.length === 1 ? 'one tab' : `${tabs.length} tabs`
  if (depths.length === 0) return count
  const [deepest, palest] = [Math.max(...depths), Math.min(...depths)]
  return `${count} of ${deepest === palest ? '' : `${showNumber(deepest, 3)} to `}${showPercent(palest)} owf`
}
