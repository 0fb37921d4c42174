// What comes of a batch: the results a dyer may tell once they can be seen, and fields of the dyer's own beside them.
// Bleed and rub are seen in a kitchen: words, never the grades of a standard.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent, ResultValue } from '../pot/events.ts'
import { RESULT_TEXT_MOST } from '../pot/result.ts'
import { grades } from '../protocol/model.ts'
import type { ResultRecord, Said } from './record.ts'

/** `least`, `most`: of a number. Without `choices` and `number` it is words. */
export type ResultKind = {
  what: string
  label: string
  hint?: string
  unit?: string
  number?: { least: number; most: number; whole?: boolean }
  choices?: readonly string[]
}

/** How much colour came off. Common practice, no source. */
const comesOff = ['none', 'trace', 'some', 'much'] as const

export const resultKinds: readonly ResultKind[] = [
  { what: 'verdict', label: 'Verdict', choices: ['as wanted', 'near', 'not as wanted'] },
  { what: 'ph', label: 'Final pH', number: { least: 0, most: 14 } },
  { what: 'residue', label: 'Left in the bath', choices: grades },
  { what: 'rinses', label: 'Rinses', number: { least: 0, most: 99, whole: true } },
  { what: 'bleed', label: 'Bleeds', hint: 'On white cotton in hand-hot soapy water.', choices: comesOff },
  { what: 'rub-dry', label: 'Rubs off, dry', choices: comesOff },
  { what: 'rub-wet', label: 'Rubs off, wet', choices: comesOff },
  { what: 'dry-weight', label: 'Dry weight', unit: 'g', number: { least: 0.01, most: 100_000 } },
  { what: 'next-time', label: 'Next time' }
]

/** One that this version does not know keeps its own name. */
export function resultKind(what: string, own: boolean): ResultKind {
  const known = own ? undefined : resultKinds.find((kind) => kind.what === what)
  return known ?? { what, label: what }
}

export function resultWords(value: ResultValue): string {
  return value.kind === 'text' ? value.text : `${value.value} ${value.unit}`.trim()
}

export type TypedResult = { ok: true; value: ResultValue } | { ok: false; say: string }

/** A result as typed. The dyer's own field takes a number with a unit for a number, anything else for words. */
export function readResult(kind: ResultKind, own: boolean, typed: string): TypedResult {
  const text = typed.trim()
  if (text === '') return { ok: false, say: `${kind.label} is empty.` }
  if (text.length > RESULT_TEXT_MOST) return { ok: false, say: `At most ${RESULT_TEXT_MOST} letters.` }
  if (kind.choices && !kind.choices.includes(text)) return { ok: false, say: `Choose ${kind.choices.join(', ')}.` }
  if (kind.number) return readNumberOf(kind, kind.number, text)
  const measured = own ? /^([-−]?\d+(?:[.,]\d+)?)\s*(\D{0,12})$/.exec(text) : null
  if (measured) {
    const unit = (measured[2] ?? '').trim()
    return { ok: true, value: { kind: 'number', value: decimal(measured[1] ?? ''), unit } }
  }
  return { ok: true, value: { kind: 'text', text } }
}

function readNumberOf(kind: ResultKind, { least, most, whole }: NonNullable<ResultKind['number']>, text: string) {
  const { unit = '' } = kind
  const bare = unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length).trim() : text
  const value = /^\d+(?:[.,]\d+)?$/.test(bare) ? decimal(bare) : Number.NaN
  const right = value >= least && value <= most && (!whole || Number.isInteger(value))
  const say = `${kind.label}: a ${whole ? 'whole ' : ''}number from ${least} to ${most}${unit === '' ? '' : `, in ${unit}`}.`
  return right ? ({ ok: true, value: { kind: 'number', value, unit } } as const) : ({ ok: false, say } as const)
}

function decimal(text: string): number {
  return Number(text.replace(',', '.').replace('−', '-'))
}

type Heard = { entry: Entry<PotEvent>; said: Said }

/** In the order of writing; of one that was told again the last is what holds. */
export function resultsOf(heard: readonly Heard[], endedAtMs: number | null): ResultRecord[] {
  return heard.flatMap(({ entry: { event, atMs }, said }): ResultRecord[] => {
    if (event.type !== 'ResultTold') return []
    const { what, own, value } = event
    const afterEndMs = endedAtMs === null || atMs <= endedAtMs ? null : atMs - endedAtMs
    return [{ what, own, label: resultKind(what, own).label, value, words: resultWords(value), afterEndMs, said }]
  })
}

/** What holds of each result: the one told last. */
export function latestResults(results: readonly ResultRecord[]): ResultRecord[] {
  return [...new Map(results.map((result) => [`${result.own} ${result.what}`, result])).values()]
}
