// What one press can mend of a flag.
import type { Flag } from '../../../core/protocol/numbers/flag.ts'
import { showNumber, showVolume, type Units } from '../../../core/quantity/index.ts'
import type { StartDraft } from '../../parts/start-draft.ts'

export type WayOut = { words: string; press: () => void }

/** Null: it is for the dyer to mend. */
export function wayOut(
  flag: Flag,
  draft: StartDraft,
  units: Units,
  change: (change: Partial<StartDraft>) => void
): WayOut | null {
  switch (flag.code) {
    case 'small-dose': {
      const id = /^materials\.(.+)\.percent$/.exec(flag.field)?.[1] ?? ''
      const bottle = draft.bottles[id]
      if (!flag.way || !bottle || bottle.percent === '') return null
      const percent = showNumber(flag.way.percent, 3)
      const weaker = { ...bottle, percent, basis: 'w/v' as const, density: '' }
      return {
        words: `Take a ${percent} % one`,
        press: () => change({ bottles: { ...draft.bottles, [id]: weaker } })
      }
    }
    case 'pot-full':
      if (flag.keptML <= 0) return null
      return {
        words: `Keep it to ${showVolume(flag.keptML, units)}`,
        press: () => change({ keptML: flag.keptML })
      }
    case 'ratio-changed':
      if (flag.why !== 'pot') return null
      return { words: 'Let it follow the ratio', press: () => change({ keptML: undefined }) }
    case 'over-boil':
      if (!flag.longer) return null
      return flag.counted
        ? { words: 'Do not count it in', press: () => change({ lengthen: false }) }
        : { words: 'Count it in', press: () => change({ lengthen: true }) }
    case 'ratio-counted':
      if (flag.pourML === null) return null
      return { words: `Pour ${showVolume(flag.pourML, units)}`, press: () => change({ countAll: true }) }
    case 'boil-presumed':
    case 'not-covered':
    case 'alkalinity-left':
    case 'ph-outside':
      return null
  }
}
