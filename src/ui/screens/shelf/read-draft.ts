// What was typed, read into a thing; every problem at its field, and what was typed stays.
import { type Read, readNumber, readPercent, type Units } from '../../../core/quantity/index.ts'
import { levelProblem, thingProblems } from '../../../core/shelf/check.ts'
import { type Thing, type ThingKind, type Treated, unitOf } from '../../../core/shelf/thing.ts'
import { type Draft, type FieldSpec, fieldsOf } from './fields.ts'
import { problemWords, readLevel, readMassTyped, readVolumeTyped } from './typed.ts'

/** A sentence for each wrong field. */
export type Problems = Record<string, string>
export type ReadDraft = { ok: true; thing: Thing; level: number | null } | { ok: false; problems: Problems }

/** `draft.level`: how much there is; empty: not told. `kept`: fields of the thing that no form shows. */
export function readDraft(kind: ThingKind, draft: Draft, units: Units, nowMs: number, kept: Thing | null): ReadDraft {
  const problems: Problems = {}
  const numbers: Record<string, number | null> = {}
  for (const spec of fieldsOf(kind, draft)) {
    const read = readField(spec, draft[spec.field] ?? '', units)
    if (read === null) continue
    numbers[spec.field] = read.ok ? read.value : Number.NaN
    if (!read.ok) problems[spec.field] = problemWords(read)
  }
  const thing = thingOf(kind, draft, numbers, kept)
  const unit = unitOf(thing)
  let level: number | null = null
  if (unit !== null && (draft.level ?? '').trim() !== '') {
    const read = readLevel(draft.level ?? '', unit, units)
    if (read.ok) level = read.value
    else problems.level = problemWords(read)
  }
  const found = [...thingProblems(thing, nowMs), level === null ? null : levelProblem(thing, level, 'level')]
  for (const one of found) if (one !== null) problems[one.field] ??= `${one.what} ${one.instead}`
  return Object.keys(problems).length > 0 ? { ok: false, problems } : { ok: true, thing, level }
}

function readField({ reads, optional }: FieldSpec, text: string, units: Units): Read<number | null> | null {
  if (reads === 'text' || reads === 'note' || reads === 'day') return null
  if (optional && text.trim() === '') return { ok: true, value: null }
  switch (reads) {
    case 'percent':
      return readPercent(text, { bare: true })
    case 'number':
      return readNumber(text, { least: 0 })
    case 'volume':
      return readVolumeTyped(text, units)
    case 'mass':
      return readMassTyped(text, units)
  }
}

function thingOf(kind: ThingKind, draft: Draft, numbers: Record<string, number | null>, kept: Thing | null): Thing {
  const text = (field: string): string => (draft[field] ?? '').trim()
  const number = (field: string): number | null => numbers[field] ?? null
  const both = { name: text('name'), note: text('note') }
  const lot = text('lot')
  switch (kind) {
    case 'stock': {
      const parts = kept?.kind === 'stock' ? kept.parts : []
      const madeOn = text('madeOn') === '' ? null : text('madeOn')
      return { kind, ...both, dye: text('dye'), percentWV: number('percentWV') ?? Number.NaN, lot, madeOn, parts }
    }
    case 'acid': {
      const form = draft.form === 'powder' ? 'powder' : 'liquid'
      const basis = draft.basis === 'w/w' ? 'w/w' : 'w/v'
      const strength = { percent: number('percent'), basis, densityGPerML: number('densityGPerML') } as const
      return { kind, ...both, acid: text('acid'), form, ...strength, lot }
    }
    case 'yarn':
      return { kind, ...both, fibre: text('fibre'), treated: (draft.treated ?? 'unknown') as Treated, lot }
    case 'water':
      return { kind, ...both, alkalinityMgPerL: number('alkalinityMgPerL'), source: text('source') }
    case 'pot':
      return { kind, ...both, volumeML: number('volumeML'), material: text('material'), lid: draft.lid !== 'no' }
    case 'burner':
      return { kind, ...both, heat: text('heat') }
  }
}
