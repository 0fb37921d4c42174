import { showDose, showDuration, type Units } from '../../../../core/quantity/index.ts'
import { type DayAct, dayActs } from '../../../../core/record/day-acts.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { clockOf } from '../../../parts/day-name.ts'
import { gatherLabels } from '../../../parts/strand-items.ts'

export type DayLine = {
  key: string
  atMs: number
  /** "10:32"; the next day's acts of an overnight pot say so. */
  time: string
  letter: string
  words: string
  /** When it was done; null: not yet. */
  done: string | null
}

export type DayBounds = { fromMs: number; toMs: number }

/** The acts of all pots of a day, in time. Those of the day before are left out: they are over. `gather`: three and more
 * in a row of one pot that differ only in their number share a line, unless some are done and some not. */
export function actsOfDay(
  records: readonly BatchRecord[],
  bounds: DayBounds,
  units: Units,
  gather: boolean
): DayLine[] {
  return records
    .flatMap((record) => {
      const acts = dayActs(record).filter((act) => act.atMs >= bounds.fromMs)
      const lines = gather ? gathered(acts, units) : acts.map((act) => [act, wordsOf(act, units)] as const)
      return lines.map(([act, words]) => lineOf(record, act, words, bounds))
    })
    .sort((a, b) => a.atMs - b.atMs)
}

function lineOf({ identity }: BatchRecord, act: DayAct, words: string, { toMs }: DayBounds): DayLine {
  const { atMs, doneAtMs, path } = act
  return {
    key: `${identity.potId} ${path}`,
    atMs,
    time: `${clockOf(atMs)}${atMs >= toMs ? ' next day' : ''}`,
    letter: identity.letter,
    words,
    done: doneAtMs === null ? null : clockOf(doneAtMs)
  }
}

/** What goes in is named once: "Acid 1 in: 20 mL", "Fill the bath: 2 L of water". */
function wordsOf({ call, amount }: DayAct, units: Units): string {
  if (amount === null) return call
  const of = call.toLowerCase().includes(amount.of.toLowerCase()) ? '' : ` of ${amount.of}`
  return `${call}: ${showDose(amount, units)}${of}`
}

function gathered(acts: readonly DayAct[], units: Units): (readonly [DayAct, string])[] {
  return gatherLabels(acts).flatMap(({ text, first, last }) => {
    const row = acts.slice(first, last + 1)
    const [begins] = row
    const ends = row.at(-1)
    const alike = new Set(row.map((act) => act.doneAtMs === null)).size === 1
    if (!begins || !ends || row.length === 1 || !alike || row.some((act) => act.amount !== null)) {
      return row.map((act) => [act, wordsOf(act, units)] as const)
    }
    const every = (ends.atMs - begins.atMs) / (row.length - 1)
    const words = `${text}, ${row.length} times, about every ${showDuration(Math.round(every / 1000) * 1000)}, until ${clockOf(ends.atMs)}`
    return [[{ ...begins, doneAtMs: ends.doneAtMs }, words] as const]
  })
}
