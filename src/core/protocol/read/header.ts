// Reads what stands above the steps: the header, inputs, materials and gaps.
import * as z from 'zod/mini'
import { quantityText, readValue, trialValue } from '../inputs.ts'
import type { Gap, Input, InputKind, LateRule, Material, Protocol } from '../model.ts'
import { Reading } from '../reading.ts'
import type { AsWritten } from '../schema/fields.ts'
import { type Header, header } from '../schema/header.ts'
import { knownScope, type Scope } from '../scope.ts'
import { type Located, placeAt, plain } from '../source/located.ts'
import { loopNames } from '../written.ts'
import { sayIssues } from './issues.ts'
import { readMaterial } from './materials.ts'
import { type Problems, whereOf } from './problems.ts'

export type HeaderRead = Omit<Protocol, 'steps'>

/** What of a header bears on the steps; the rest is only said to people. */
export type Bearing = Omit<HeaderRead, 'title' | 'about' | 'use' | 'trouble' | 'demo'>

const usualC = 20

/** Reads the header; what its schema refuses is told and replaced, so that the steps can still be read against it. */
export function readHeader(root: Located, problems: Problems): { header: HeaderRead; whole: boolean } {
  const read = z.safeParse(header, plainHeader(root))
  if (read.success) return { header: build(read.data, root, problems), whole: true }
  const at = { line: 1, column: 1 }
  sayIssues(
    read.error.issues,
    { located: root, keyAt: at, where: '', called: 'The protocol', schema: header },
    problems
  )
  const mended = z.safeParse(header, mend(plainHeader(root), read.error.issues))
  const empty: Header = { strandline: 1, title: 'untitled', steps: [{}] }
  return { header: build(mended.success ? mended.data : empty, root, problems), whole: false }
}

/** The steps stay out of it: the schema of the header only counts them. */
function plainHeader(root: Located): unknown {
  if (root.kind !== 'map') return plain(root)
  return Object.fromEntries(
    root.entries.map(({ key, value }) => [
      key,
      key === 'steps' && value.kind === 'list' ? value.items.map(() => null) : plain(value)
    ])
  )
}

/** Takes out what was refused, at the depth of one input or one material. */
function mend(written: unknown, issues: readonly z.core.$ZodIssue[]): unknown {
  if (typeof written !== 'object' || written === null || Array.isArray(written)) return null
  const kept: Record<string, unknown> = { ...written, strandline: 1, steps: [{}] }
  if (typeof kept.title !== 'string') kept.title = 'untitled'
  for (const issue of issues) {
    const [key, inner] = issue.path.map(String)
    if (issue.code === 'unrecognized_keys' && key === undefined) for (const name of issue.keys) delete kept[name]
    if (key === undefined || key === 'steps' || key === 'strandline') continue
    const group = kept[key]
    if (inner === undefined || typeof group !== 'object' || group === null) {
      if (key === 'title') kept.title = 'untitled'
      else delete kept[key]
    } else if (Array.isArray(group)) kept[key] = group.filter((_, i) => String(i) !== inner)
    else kept[key] = { ...group, [inner]: key === 'materials' ? 'other' : { ask: 'x', kind: 'number', default: 1 } }
  }
  return kept
}

function build(given: Header, root: Located, problems: Problems): HeaderRead {
  const kitchen = given.kitchen ?? null
  const scope: Scope = { ...emptyScope, kitchen }
  const r = new Reading(scope)
  const range = (written: AsWritten | undefined, key: string): number =>
    written === undefined ? usualC : (r.tempC(written, [key]) ?? usualC)
  const inputs = Object.entries(given.inputs ?? {}).map(([id, input]) => readInput(id, input, kitchen, r))
  const materials = Object.entries(given.materials ?? {}).map(([id, material]) => readMaterial(id, material, r))
  checkMaterialNames(materials, r)
  for (const material of materials) {
    for (const part of material.parts ?? []) {
      const other = materials.find((one) => one.id === part.id)
      if (!other || other === material || other.kind !== 'stock') {
        r.say(
          ['materials', material.id, 'parts', part.id],
          'unknown-material',
          `There is no stock ${part.id}.`,
          'name stocks that materials lists'
        )
      }
    }
  }
  const late: LateRule = given.late ?? 'shift'
  const head: HeaderRead = {
    strandline: 1,
    title: given.title,
    about: given.about ?? null,
    use: given.use ?? null,
    trouble: given.trouble ?? null,
    demo: given.demo ?? false,
    kitchen,
    late,
    inputs,
    materials,
    liquorRatio: readRatio(given.liquor, r),
    startC: range(given.start, 'start'),
    roomC: range(given.room, 'room'),
    parent: given.parent ?? 'none',
    cautions: given.cautions === undefined ? [] : [given.cautions].flat(),
    gaps: (given.gaps ?? []).map((gap, i) => readGap(gap, ['gaps', i], r))
  }
  for (const { at, code, what, instead } of r.problems) {
    problems.say(placeAt(root, at), whereOf('', at), code, what, instead)
  }
  return head
}

/** A protocol of which nothing is known yet. */
export const emptyScope: Scope = {
  kitchen: null,
  quantities: {},
  shown: {},
  loops: [],
  materials: [],
  moments: new Set(),
  startC: usualC,
  boilC: 100,
  liquorRatio: null
}

function readRatio(written: AsWritten | undefined, r: Reading): number | null {
  if (written === undefined) return null
  const amount = r.amount(written, ['liquor'], 'write 20:1')
  if (!amount) return null
  if (amount.kind === 'liquor') return amount.ratio
  r.say(['liquor'], 'ratio-unclear', `"${amount.asEntered}" is no liquor ratio.`, 'write 20:1')
  return null
}

type WrittenInput = NonNullable<Header['inputs']>[string]

function readInput(id: string, given: WrittenInput, kitchen: Header['kitchen'] | null, r: Reading): Input {
  const value = (key: 'default' | 'least' | 'most'): number | string | null => {
    const written = given[key]
    if (written === undefined) return null
    const read = readValue(given.kind as InputKind, String(written), kitchen ?? null)
    if (read.ok) return read.value
    const { code, found, instead } = read.problem
    r.say(['inputs', id, key], code, `"${found}" can't be read.`, instead)
    return null
  }
  const number = (key: 'least' | 'most'): number | null => {
    const read = value(key)
    return typeof read === 'number' ? read : null
  }
  const input: Input = {
    id,
    ask: given.ask,
    kind: given.kind,
    default: value('default'),
    least: number('least'),
    most: number('most'),
    choices: given.choices ?? []
  }
  checkOwnLimits(input, r)
  if ((loopNames as readonly string[]).includes(id)) {
    // {band} inside a for each is the band.
    r.say(['inputs', id], 'duplicate-id', `${id} is the name of a loop's item.`, 'choose another name')
  }
  return input
}

function checkOwnLimits(input: Input, r: Reading): void {
  const { id, least, most, choices } = input
  const at = (key: string): string[] => ['inputs', id, key]
  if (least !== null && most !== null && least > most) {
    r.say(at('least'), 'least-over-most', 'least lies above most.', 'swap the two')
    return
  }
  if (input.kind === 'choice' && choices.length === 0) {
    r.say(['inputs', id], 'missing-field', `${id}: choices is missing.`, 'add choices: [yes, no]')
    return
  }
  const given = input.default
  if (given === null) return
  const outside =
    typeof given === 'number'
      ? (least !== null && given < least) || (most !== null && given > most)
      : input.kind === 'choice' && !choices.includes(given)
  if (outside)
    r.say(
      at('default'),
      'default-outside',
      'The default is not among what the input takes.',
      'change the default or the limits'
    )
}

function checkMaterialNames(materials: Material[], r: Reading): void {
  const seen = new Set<string>()
  for (const { id, label } of materials) {
    for (const name of new Set([id.toLowerCase(), label.toLowerCase()])) {
      if (seen.has(name))
        r.say(['materials', id], 'duplicate-id', `Two materials are called ${name}.`, 'give each its own name')
      seen.add(name)
    }
  }
}

type WrittenGap = NonNullable<Header['gaps']>[number]

function readGap(given: WrittenGap, at: (string | number)[], r: Reading): Gap {
  const atLeastMs = r.ms(given['at least'], [...at, 'at least'])
  const atMostMs = r.ms(given['at most'], [...at, 'at most'])
  if (atLeastMs !== null && atMostMs !== null && atLeastMs > atMostMs) {
    r.say([...at, 'at least'], 'least-over-most', 'at least is longer than at most.', 'swap the two')
  }
  if (given['at least'] === undefined && given['at most'] === undefined) {
    r.say(at, 'missing-field', 'A gap has no limit.', 'add at most: 2 h, or at least: 10 min')
  }
  return { from: given.from, to: given.to, atLeastMs, atMostMs, late: given.late ?? 'off-protocol' }
}

/** The scope in which a protocol's steps are tried out: every input at its default. */
export function trialScope(head: Bearing, moments: ReadonlySet<string>): Scope {
  const quantities: Record<string, string> = {}
  for (const input of head.inputs) quantities[input.id] = quantityText(input.kind, trialValue(input))
  return knownScope({
    ...emptyScope,
    kitchen: head.kitchen,
    quantities,
    shown: quantities,
    materials: head.materials,
    moments,
    startC: head.startC,
    liquorRatio: head.liquorRatio
  })
}
