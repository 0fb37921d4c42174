// The series that a batch dyed, as it is laid beside the skein: which of its tabs lie there.
import type { Signal } from '@preact/signals'
import { recordOf } from '../../../core/record/record-of.ts'
import { type SeriesLink, type SeriesTab, seriesTabs, tabSay } from '../../../core/record/series.ts'
import type { Kitchen } from '../../kitchen.ts'
import type { Draft } from './draft.ts'
import { limits, movedSeries, type Shape } from './marks.ts'

/** `tabs`: all that the batch dyed; none while it is read. `out`: jars whose tabs do not lie there. `problem`: why it can't
 * be the series. */
export type Series = {
  batchId: string
  name: string
  fibre: string
  tabs: SeriesTab[]
  out: string[]
  problem: string | null
}

export const tabsThere = ({ tabs, out }: Series): SeriesTab[] => tabs.filter(({ jar }) => !out.includes(jar))

/** What is kept with a verdict; null where no batch, or no tab of it, is told. */
export function linkOf(series: Series | null): SeriesLink | null {
  if (series === null) return null
  const tabs = tabsThere(series)
  return tabs.length === 0 ? null : { batchId: series.batchId, name: series.name, tabs }
}

export const withSeries = (series: Series | null): { series?: SeriesLink } => {
  const link = linkOf(series)
  return link === null ? {} : { series: link }
}

/** Reads the batch and lays its tabs out; an answer that was overtaken is dropped. */
export async function chooseSeries(kitchen: Kitchen, draft: Signal<Draft>, batchId: string | null): Promise<void> {
  if (batchId === null) {
    lay(draft, null)
    return
  }
  const begun: Series = { batchId, name: '', fibre: '', tabs: [], out: [], problem: null }
  lay(draft, begun)
  const read = await readSeries(kitchen, begun)
  if (draft.value.series?.batchId === batchId) lay(draft, read)
}

async function readSeries(kitchen: Kitchen, begun: Series): Promise<Series> {
  try {
    const { entries, damaged } = await kitchen.entries(begun.batchId)
    const record = recordOf(entries, { damaged })
    if (record === null) return { ...begun, problem: 'Its record can’t be read here. Choose another batch.' }
    const tabs = seriesTabs(record)
    const name = record.identity.batchName
    if (tabs.length === 0) {
      const problem = `${name} dyed no series: fewer than three jars had a stock of their own. Choose the batch that did, such as one of “Dilution series in jars”.`
      return { ...begun, name, problem }
    }
    const out = tabs.slice(limits.series[1]).map(({ jar }) => jar)
    return { ...begun, name, fibre: record.substrate.fibre, tabs, out }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return { ...begun, problem: `Its record can’t be read (${why}).` }
  }
}

/** A tab is laid there, or taken away. */
export function toggleTab(draft: Signal<Draft>, jar: string): void {
  const { series } = draft.value
  if (series === null) return
  const out = series.out.includes(jar) ? series.out.filter((each) => each !== jar) : [...series.out, jar]
  lay(draft, { ...series, out })
}

/** The marks follow: one for each tab, with its name, each at the place it had. */
function lay(draft: Signal<Draft>, series: Series | null): void {
  const { shape, shots } = draft.value
  const there = series === null ? [] : tabsThere(series)
  const tabs = there.length === 0 ? null : there.map(tabSay)
  const now: Shape = { ...shape, series: tabs?.length ?? shape.series, tabs }
  const [before, after] = [shape.tabs, tabs]
  const marked = shots.map((shot) => ({
    ...shot,
    places: before && after ? movedSeries(shot.places, before, after) : shot.places,
    read: null,
    problem: null
  }))
  draft.value = { ...draft.value, series, shape: now, shots: marked }
}
