// What speaks against a series as the control of a skein, by its record and by what was read of it. It is told beside the
// verdict and changes nothing of it: what it means is for the dyer.
import type { Lab } from '../colour/index.ts'
import type { SeriesTab } from './series.ts'

/** A tab with so many times the dye of another must be the deeper one. Common practice, no source: half as much again is
 * far more than a syringe errs by. */
const MORE_DYE = 1.5
/** Readings of two tabs in L* that may be one and the same. Common practice, no source. */
const SAME_DEPTH_L = 1

type Yarns = { series: string; skein: string | null }

/** `labs`: of each tab as it was read, in the same order; none where nothing was. `yarns`: fibres as the records say. */
export function seriesDoubts(tabs: readonly SeriesTab[], labs: readonly Lab[], { series, skein }: Yarns): string[] {
  const doubts: string[] = []
  if (skein !== null && skein.trim().toLowerCase() !== series.trim().toLowerCase()) {
    doubts.push(`The series is of ${series}, the skein of ${skein}: each yarn takes dyes in its own way.`)
  }
  const left = tabs.filter((tab) => tab.left !== null && tab.left !== 'clear' && tab.left !== 'trace')
  for (const tab of left) {
    doubts.push(
      `${tab.jar} was left at “${tab.left}”: it is not exhausted, and may have taken one dye before the other.`
    )
  }
  const unseen = tabs.filter((tab) => tab.left === null)
  if (unseen.length > 0) {
    doubts.push(`Whether the bath of ${listed(unseen)} was clear at the end, nobody wrote down.`)
  }
  const unknown = tabs.filter(({ depthPercent }) => depthPercent === null)
  if (unknown.length > 0) doubts.push(`How strong the stock in ${listed(unknown)} was is not known.`)
  const odd = labs.length === tabs.length ? outOfOrder(tabs, labs) : null
  if (odd) {
    const [deep, pale] = odd
    doubts.push(
      `${deep.jar} had ${deep.depthPercent} % and is read paler than ${pale.jar} with ${pale.depthPercent} %: are they marked in their order, or mixed up?`
    )
  }
  return doubts
}

/** A tab that was read paler than one with far less dye in it. */
function outOfOrder(tabs: readonly SeriesTab[], labs: readonly Lab[]): [SeriesTab, SeriesTab] | null {
  for (const [i, deep] of tabs.entries()) {
    for (const [j, pale] of tabs.entries()) {
      const [more, less] = [deep.depthPercent, pale.depthPercent]
      if (more === null || less === null || more < MORE_DYE * less) continue
      if ((labs[i]?.l ?? 0) > (labs[j]?.l ?? 0) + SAME_DEPTH_L) return [deep, pale]
    }
  }
  return null
}

const listed = (tabs: readonly SeriesTab[]): string => tabs.map(({ jar }) => jar).join(', ')
