// "Make a protocol of what I did": a batch's real times and amounts as a text of our own language.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import { isFree } from '../protocol/free-pot.ts'
import { trialInputs } from '../protocol/programme/trial.ts'
import { programmeOf } from '../protocol/programme.ts'
import { readProtocol } from '../protocol/read.ts'
import { roughProblem, writtenStepsMost } from '../protocol/source/limits.ts'
import { stepsOf } from '../protocol/tree.ts'
import { metricUnits, showMass } from '../quantity/index.ts'
import { laidOut } from './as-protocol/laid-out.ts'
import { Materials } from './as-protocol/materials.ts'
import { clean, linesOf, step, stepsIn, valueText, type Written } from './as-protocol/text.ts'
import { toldOf } from './as-protocol/told.ts'
import { tempText } from './as-protocol/words.ts'
import { keyOf, withCorrections } from './corrected.ts'
import { localClock, localDay } from './local-time.ts'
import type { BatchRecord } from './record.ts'

type PotEntry = Entry<PotEvent>

export type MadeProtocol = {
  title: string
  text: string
  /** Steps that a protocol has no room for: it holds 500. */
  leftOut: number
}

/** Enough passes for the rates of rises to follow where the programme presumes that they begin. */
const PASSES = 4
/** Left free for the heat: off at the end, and for branches. */
const STEPS_MOST = writtenStepsMost - 20

/** The text of a protocol that does again what was done in a batch, finished or not: acts in the order of their real
 * times, what really went in, the time between as waits (seconds rounded, the sum kept), rises at their real rate.
 * `record` and `entries` are of the same pot: undone entries are left out, corrected ones say the new value. The text
 * is one that the reader takes. Never throws. */
export function protocolOfRecord(record: BatchRecord, entries: readonly PotEntry[]): MadeProtocol {
  const materials = new Materials(record.programme, record.substrate.goodsMassG)
  const told = toldOf(standing(entries), record.programme, materials)
  const startC = told.deeds.find((deed) => deed.kind === 'rise')
  const title = titleOf(record)
  let fromC: number[] = []
  let made: MadeProtocol = { title, text: '', leftOut: 0 }
  for (let pass = 0; pass < PASSES; pass++) {
    const { kept, leftOut } = within(laidOut(told, fromC))
    const head = headOf(record, title, startC?.kind === 'rise' ? startC.rise.fromC : null, leftOut)
    made = { title, text: textOf(head, materials, kept), leftOut }
    const next = risesOf(made.text)
    if (next === null || sameC(next, fromC)) break
    fromC = next
  }
  return made
}

/** Entries that count: what was undone is out, what was corrected says the new value. */
function standing(entries: readonly PotEntry[]): PotEntry[] {
  const undone = new Set<string>()
  for (const { event } of entries) {
    if (event.type === 'Withdrawn') for (const ref of event.entries) undone.add(keyOf(ref))
  }
  return withCorrections(entries).entries.filter((entry) => !undone.has(keyOf(entry)))
}

/** Where the programme presumes that each rise begins, °C; null: the text can't be read. */
function risesOf(text: string): number[] | null {
  const read = readProtocol(text)
  if (!read.ok) return null
  const made = programmeOf(read.protocol, trialInputs(read.protocol))
  return made.ok ? stepsOf(made.programme).flatMap(({ ramp }) => (ramp ? [ramp.expectedFromC] : [])) : null
}

function sameC(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((tempC, i) => Math.abs(tempC - (b[i] ?? 0)) < 0.05)
}

function within(written: readonly Written[]): { kept: readonly Written[]; leftOut: number } {
  const all = stepsIn(written)
  if (all === 0) return { kept: [...written, step('do', { say: 'Nothing was done in this batch' }, 'say')], leftOut: 0 }
  if (all <= STEPS_MOST) return { kept: written, leftOut: 0 }
  const kept: Written[] = []
  let steps = 0
  for (const one of written) {
    steps += stepsIn([one])
    if (steps > STEPS_MOST) break
    kept.push(one)
  }
  if (heatOnAfter(kept)) kept.push(step('heat', { to: 'off' }, 'to'))
  return { kept, leftOut: all - stepsIn(kept) }
}

function heatOnAfter(written: readonly Written[]): boolean {
  return written.reduce((on, one) => {
    if (one.kind === 'alongside') return true
    return one.kind === 'step' && one.word === 'heat' ? one.fields.to !== 'off' : on
  }, false)
}

function titleOf({ identity }: BatchRecord): string {
  return clean(`${identity.batchName}, as done`, 80, 'As done')
}

function headOf(record: BatchRecord, title: string, startC: number | null, leftOut: number): string[] {
  const { identity, substrate, programme, protocol } = record
  const tz = record.journal[0]?.said.tzOffsetMin ?? 0
  const when = `${localDay(identity.startedAtMs, tz)} at ${localClock(identity.startedAtMs, tz)}`
  const by = isFree(programme) ? 'a free pot' : `by the protocol ${protocol.title}`
  const ended = identity.status === 'aborted' ? ` It ended early: ${identity.endedBecause}.` : ''
  const about = [
    `Made from the batch ${identity.batchName}, begun on ${when}, ${by}.`,
    `The times are those really kept, the amounts those that really went in, for ${showMass(substrate.goodsMassG, metricUnits)} of goods.${ended}`,
    leftOut > 0 ? `Its last ${leftOut} steps are left out: a protocol holds ${writtenStepsMost}.` : ''
  ].join(' ')
  const parent = substrate.parentBatchId !== null ? 'batch' : substrate.bath.parentBatchId !== null ? 'bath' : null
  const start = startC === null ? null : Math.min(100, Math.max(0, startC))
  return [
    'strandline: 1',
    `title: ${valueText(title, false)}`,
    `about: ${valueText(clean(about, 1900), false)}`,
    `late: ${programme.late}`,
    ...(start === null ? [] : [`start: ${tempText(start)}`]),
    ...(programme.roomC >= 0 && programme.roomC <= 60 ? [`room: ${tempText(programme.roomC)}`] : []),
    ...(parent === null ? [] : [`parent: ${parent}`]),
    ...(programme.cautions.length === 0
      ? []
      : [
          `cautions: ${valueText(
            programme.cautions.slice(0, 20).map((one) => clean(one, 200, 'Take care.')),
            true
          )}`
        ])
  ]
}

/** Comments are left out where they would make the text larger than a protocol may be. */
function textOf(head: readonly string[], materials: Materials, written: readonly Written[]): string {
  const stuffs = materials.lines()
  const before = [...head, ...(stuffs.length === 0 ? [] : ['materials:', ...stuffs]), 'steps:']
  const full = [...before, ...linesOf(written, 2), ''].join('\n')
  if (roughProblem(full) === null) return full
  return [...before, ...linesOf(bare(written), 2), ''].join('\n')
}

function bare(written: readonly Written[]): Written[] {
  return written.flatMap((one): Written[] => {
    if (one.kind === 'comment') return []
    return one.kind === 'step' ? [one] : [{ ...one, heat: bare(one.heat), hands: bare(one.hands) }]
  })
}
