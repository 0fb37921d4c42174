// Two to eight batches side by side: what was the same and what differed, in how they began, in their steps, in what
// came of them. Values are compared as they are, not as they are shown: two that only look alike are told apart.
import { metricUnits, showDose, showDuration, showMass, type Units } from '../quantity/index.ts'
import { bathFates, gradeWords } from './event-words.ts'
import type { AmountRecord, BatchRecord, StepRecord } from './record.ts'
import { latestResults } from './results.ts'
import { metSteps, sameProtocol, stepKeys } from './same-step.ts'
import { foundSay } from './skein-verdict.ts'
import type { Judgement } from './swatch.ts'
import { temperatureCurve, timeAboveMs } from './temperature-curve.ts'

export const COMPARE_LEAST = 2
export const COMPARE_MOST = 8

/** `values`: one for each batch, in their order; "–" where a batch has none. */
export type CompareRow = { key: string; label: string; values: string[]; same: boolean }

export type Comparison = {
  start: CompareRow[]
  steps: CompareRow[]
  result: CompareRow[]
  /** What of the start differed; none: the starting conditions were the same. */
  startDiffers: CompareRow[]
}

type Cell = { is: string | number | null; say: string }
type Facts = Map<string, { label: string; cell: Cell }>

/** A step that took this much longer or shorter than another is not worth a word. Common practice, no source. */
const WORTH_SAYING_MS = 60_000

/** `verdicts`: of the skeins, by the batch; they lie in no record. */
export function compareRecords(
  records: readonly BatchRecord[],
  units: Units = metricUnits,
  verdicts: ReadonlyMap<string, Judgement> = new Map()
): Comparison {
  const start = rowsOf(records.map((record) => startFacts(record, units)))
  return {
    start,
    steps: stepRows(records, units),
    result: rowsOf(records.map((record) => resultFacts(record, verdicts))),
    startDiffers: start.filter((row) => !row.same)
  }
}

/** Rows in the order in which the facts are met; a batch that lacks one differs in it. */
function rowsOf(all: readonly Facts[]): CompareRow[] {
  const labels = new Map<string, string>()
  for (const facts of all) for (const [key, { label }] of facts) if (!labels.has(key)) labels.set(key, label)
  return [...labels].map(([key, label]) =>
    rowOf(
      key,
      label,
      all.map((facts) => facts.get(key)?.cell ?? nothing)
    )
  )
}

const nothing: Cell = { is: null, say: '–' }

function rowOf(key: string, label: string, cells: readonly Cell[]): CompareRow {
  const same = cells.every((cell) => cell.is === cells[0]?.is)
  // Two numbers may be shown alike and not be: then they are shown as they are.
  const alike = !same && new Set(cells.map((cell) => cell.say)).size === 1
  const values = cells.map(({ is, say }) => (alike && typeof is === 'number' ? `${say} (${is})` : say))
  return { key, label, values, same }
}

const words = (say: string): Cell => ({ is: say, say: say === '' ? '–' : say })

function startFacts({ identity, substrate, protocol, programme, checks }: BatchRecord, units: Units): Facts {
  const facts: Facts = new Map()
  const put = (key: string, label: string, cell: Cell): Facts => facts.set(key, { label, cell })
  const { bath, skeins, fibre, goodsMassG, parentBatchId } = substrate
  put('protocol', 'Protocol', words(protocol.title))
  put('text', 'Its text', { is: protocol.text, say: `version ${protocol.version}` })
  put('fibre', 'Fibre', words(fibre))
  put('goods', 'Yarn, dry', { is: goodsMassG, say: showMass(goodsMassG, units) })
  put('skeins', 'Skeins', { is: skeins.length, say: String(skeins.length) })
  put('dyed', 'Yarn', words(parentBatchId === null ? 'undyed' : 'dyed before'))
  put('bath', 'Bath', words(bath.number === 1 && !bath.unknownDyeLeft ? 'fresh' : `bath ${bath.number}, used before`))
  put('burner', 'Burner', words(identity.burner))
  put('room', 'Room', { is: programme.roomC, say: `${programme.roomC} °C` })
  const boilC = programme.given?.boilC ?? null
  put('boil', 'Water boils at', { is: boilC, say: boilC === null ? '–' : `${boilC} °C` })
  put('liquor', 'Bath volume', amountCell(programme.liquorML, 'mL', units))
  for (const { id, label, shown } of programme.inputs) put(`input ${id}`, label, words(shown))
  for (const [id, bottle] of Object.entries(programme.given?.materials ?? {})) {
    const strength = bottle.percent === null ? '' : `, ${bottle.percent} % ${bottle.basis}`
    put(`bottle ${id}`, `Bottle of ${id}`, words(`${bottle.name}${strength}`))
  }
  for (const { id, label, amount } of programme.setOut) {
    put(
      `out ${id}`,
      `Set out: ${label === amount.of ? label : `${label}, ${amount.of}`}`,
      amountCell(amount.value, amount.unit, units)
    )
  }
  const without = checks.filter((check) => !check.ok).map((check) => check.what)
  put('checks', 'Began without', words(without.length === 0 ? 'nothing missing' : without.join(', ')))
  return facts
}

function amountCell(value: number | null, unit: 'mL' | 'g' | 'count', units: Units): Cell {
  return value === null ? nothing : { is: value, say: showDose({ value, unit }, units) }
}

function stepRows(records: readonly BatchRecord[], units: Units): CompareRow[] {
  const byPath = sameProtocol(records)
  const met = records.map((record) => metSteps(record, byPath))
  return stepKeys(met).flatMap(({ key, label }): CompareRow[] => {
    const steps = met.map((each) => each.find((one) => one.key === key)?.step ?? null)
    const added = records.map((record, i) => addedAt(record, steps[i] ?? null))
    const time = timesRow(key, label, steps)
    const came = { ...rowOf(`how ${key}`, `${label}: how it went`, steps.map(howCell)) }
    const rows = [time, came]
    if (added.some((amount) => amount !== null)) {
      rows.push(
        rowOf(
          `added ${key}`,
          `${label}: added`,
          added.map((amount) => addedCell(amount, units))
        )
      )
    }
    return rows.filter((row) => row !== came || !row.same || came.values[0] !== 'as called')
  })
}

/** Times of hands are never equal to the second: within a minute of each other they are the same. */
function timesRow(key: string, label: string, steps: readonly (StepRecord | null)[]): CompareRow {
  const took = steps.map((step) => (step === null || step.endMs === null ? null : step.endMs - step.startMs))
  const known = took.filter((ms) => ms !== null)
  const close = known.length === 0 || Math.max(...known) - Math.min(...known) < WORTH_SAYING_MS
  const values = took.map((ms, i) => (ms === null ? (steps[i] ? 'open' : 'not done') : showDuration(ms)))
  const same = (known.length === took.length && close) || (known.length === 0 && new Set(values).size === 1)
  return { key: `took ${key}`, label: `${label}: took`, values, same }
}

function howCell(step: StepRecord | null): Cell {
  if (step === null) return words('not done')
  if (step.how === 'skipped') return words(`skipped${step.reason ? `: ${step.reason}` : ''}`)
  if (step.lateMs > 0) return words(`${showDuration(step.lateMs)} late`)
  return words(step.how === 'early' ? 'ended early' : 'as called')
}

function addedAt(record: BatchRecord, step: StepRecord | null): AmountRecord | null {
  if (step === null) return null
  return record.amounts.find((one) => one.path === step.path && one.fate === 'added') ?? null
}

function addedCell(amount: AmountRecord | null, units: Units): Cell {
  if (!amount?.added) return nothing
  const { value, unit } = amount.added
  return { is: value, say: `${showDose({ value, unit }, units)} of ${amount.of}` }
}

function resultFacts(record: BatchRecord, verdicts: ReadonlyMap<string, Judgement>): Facts {
  const facts: Facts = new Map()
  const put = (key: string, label: string, cell: Cell): Facts => facts.set(key, { label, cell })
  const { identity, judgements } = record
  const verdict = verdicts.get(identity.potId)
  if (verdicts.size > 0) put('verdict', 'Verdict on the skein', verdict ? words(foundSay(verdict)) : nothing)
  put('status', 'Ended', words(endWords(record)))
  const tookMs = identity.endedAtMs === null ? null : identity.endedAtMs - identity.startedAtMs
  put(
    'took',
    'In all',
    tookMs === null ? nothing : { is: Math.round(tookMs / WORTH_SAYING_MS), say: showDuration(tookMs) }
  )
  const { points } = temperatureCurve(record, identity.endedAtMs ?? identity.startedAtMs)
  for (const limitC of [60, 80]) {
    const aboveMs = timeAboveMs(points, limitC)
    const cell = aboveMs === null ? nothing : { is: Math.round(aboveMs / WORTH_SAYING_MS), say: showDuration(aboveMs) }
    put(`above ${limitC}`, `At ${limitC} °C and more, by the readings`, cell)
  }
  for (const { of, ...judged } of judgements) put(`judged ${of}`, `Judged last: ${of}`, words(gradeWords(judged)))
  put('off', 'Protocol', words(record.offProtocol ? 'off protocol' : 'kept'))
  for (const { own, what, label, words: say } of latestResults(record.results))
    put(`result ${own} ${what}`, label, words(say))
  return facts
}

function endWords({ identity }: BatchRecord): string {
  switch (identity.status) {
    case 'running':
      return 'on the stove'
    case 'held':
      return 'stopped, still dyeing'
    case 'complete':
      return `done, bath ${bathFates[identity.bathFate ?? 'dropped']}`
    case 'aborted':
      return `early: ${identity.endedBecause}`
  }
}
