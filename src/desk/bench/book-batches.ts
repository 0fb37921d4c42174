// Batches for a book, made by a script: each run by the real engine with a person who is late now and then, from three
// short protocols. The same number always makes the same batch.

import type { PotCommand } from '../../core/pot/commands.ts'
import { decide } from '../../core/pot/decide.ts'
import { ENTRY_VERSION } from '../../core/pot/entry.ts'
import type { By, PotEvent, PotIdentity } from '../../core/pot/events.ts'
import { sealEntry } from '../../core/pot/write-entry.ts'
import type { Programme, Protocol } from '../../core/protocol/model.ts'
import { programmeOf } from '../../core/protocol/programme.ts'
import { readProtocol } from '../../core/protocol/read.ts'
import type { PotEntry, PotSummary } from '../../session/ports.ts'
import { rehearse } from '../../session/rehearsal.ts'
import type { RehearsalPerson } from '../../session/rehearsal-person.ts'
import { summaryOf } from '../../session/summary.ts'

const MIN = 60_000
const DAY = 24 * 60 * MIN

const titles = ['Warm bath', 'Slow rise', 'Two acids'] as const
const colourways = ['Moss', 'Plum', 'Rust', 'Slate', 'Straw', 'Heather', 'Ink', 'Madder']
const fibres = ['wool', 'wool and silk', 'silk', 'alpaca']
const verdicts = ['as wanted', 'near', 'not as wanted']
const person: By = { kind: 'person', name: null, via: 'tap' }

function textOf(title: string): string {
  return `strandline: 1
title: ${title}
late: shift
liquor: 30:1
inputs:
  depth: {ask: Depth of shade, kind: percent, default: 1 %, least: 0.05 %, most: 4 %}
materials:
  dye: {kind: stock, label: stock Y, strength: 1 %, amount: "{depth} owf"}
  acid: {kind: acid, label: vinegar, strength: 5 %, amount: 2 % owf}
steps:
  - add: {id: dyed, amount: all of dye, call: Dye in, knot: Dye in}
  - enter: {what: the skein}
  - heat: {id: rise, to: 85 °C, rate: 1.5 °C/min}
  - add: {id: acid1, amount: all of acid, knot: Acid}
  - hold: {id: top, for: 30 min, at: 80..90 °C, outside: note}
  - measure: {what: temperature, knot: Reading}
  - heat: off
  - rinse
`
}

/** A whole number under `under`, always the same one for the same two. */
function lot(no: number, salt: number, under: number): number {
  let hash = Math.imul(no + 1, 0x9e3779b1) ^ Math.imul(salt + 1, 0x85ebca6b)
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d)
  return (hash >>> 8) % under
}

const late = (no: number): RehearsalPerson => ({
  delayMs: ({ path }) => (lot(no, path.length * 7, 3) === 0 ? (1 + lot(no, path.length, 6)) * MIN : 0),
  answer: () => null
})

const protocols = titles.map((title): { text: string; protocol: Protocol } => {
  const text = textOf(title)
  const read = readProtocol(text)
  if (!read.ok) throw new Error(`The bench's protocol can't be read: ${JSON.stringify(read.problems)}`)
  return { text, protocol: read.protocol }
})

const programmes = new Map<string, Programme>()

function programmeFor(at: number, massG: number, depth: string): Programme {
  const key = `${at} ${massG} ${depth}`
  const known = programmes.get(key)
  if (known) return known
  const { protocol } = protocols[at] as (typeof protocols)[number]
  const skeins = [{ tag: 'S1', massG }]
  const made = programmeOf(protocol, { skeins, values: { depth }, materials: {}, roomC: 20, boilC: null })
  if (!made.ok) throw new Error(`The bench's programme can't be made: ${JSON.stringify(made.problems)}`)
  programmes.set(key, made.programme)
  return made.programme
}

export type Batch = { entries: PotEntry[]; summary: PotSummary }

/** Batch `no` of the book; the higher the number, the longer ago. Four a day, the last one begun four hours before `nowMs`. */
export function batchNo(no: number, nowMs: number): Batch {
  const at = no % titles.length
  const massG = 50 + 25 * lot(no, 1, 4)
  const depth = `${(1 + lot(no, 2, 6)) * 0.5} %`
  const programme = programmeFor(at, massG, depth)
  const startMs = nowMs - 4 * 60 * MIN - Math.floor(no / 4) * DAY - (no % 4) * 25 * MIN
  const pot = potFor(no, startMs, massG)
  const { title = '', text = '' } = { title: titles[at], text: protocols[at]?.text }
  const done = rehearse(programme, pot, { title, text, version: 'bench', from: 'file' }, startMs, late(no))
  if (done.stuck) throw new Error(`The bench's batch stopped short: ${done.stuck}`)
  const told = done.told.map((each) => ({ ...each, by: each.by.kind === 'person' ? person : each.by }))
  const lastMs = told.at(-1)?.atMs ?? startMs
  for (const command of afterwards(no)) {
    const header = { commandId: `${no} ${command.type}`, atMs: lastMs + 30 * MIN, by: person }
    const decision = decide(done.state, command, header)
    if (!decision.ok) throw new Error(decision.refusal.say)
    for (const event of decision.events) told.push({ ...header, event })
  }
  const entries = told.map((each, i) => entryOf(pot.potId, each, i + 1))
  const summary = summaryOf(`pot/${pot.potId}`, done.state, entries, null)
  if (!summary) throw new Error('The bench’s batch was not started.')
  return { entries, summary }
}

function afterwards(no: number): PotCommand[] {
  const verdict = verdicts[lot(no, 3, verdicts.length)] ?? 'near'
  const commands: PotCommand[] = [
    { type: 'TellResult', what: 'verdict', own: false, value: { kind: 'text', text: verdict } }
  ]
  if (lot(no, 4, 5) === 0) commands.push({ type: 'WriteNote', text: `Looks even, skein ${lot(no, 5, 900)}` })
  return commands
}

function potFor(no: number, startMs: number, massG: number): PotIdentity {
  const colourway = colourways[lot(no, 6, colourways.length)] ?? 'Moss'
  return {
    potId: `bench-${no}`,
    batchName: `${new Date(startMs).toISOString().slice(0, 10)} ${colourway} ${no}`,
    colourway,
    letter: 'A',
    burner: 'front left',
    colour: '#285f57',
    skeins: [{ tag: 'S1', massG }],
    fibre: fibres[lot(no, 7, fibres.length)] ?? 'wool',
    parentBatchId: null,
    bath: { bathId: `bath-${no}`, number: 1, parentBatchId: null, unknownDyeLeft: false },
    by: null
  }
}

type Told = { atMs: number; commandId: string; by: By; event: PotEvent }

function entryOf(potId: string, { atMs, commandId, by, event }: Told, seq: number): PotEntry {
  return sealEntry<PotEvent>({
    v: ENTRY_VERSION,
    streamId: `pot/${potId}`,
    writerId: 'bench',
    seq,
    after: seq > 1 ? { writerId: 'bench', seq: seq - 1 } : null,
    commandId: `${potId} ${commandId}`,
    atMs,
    recordedAtMs: atMs,
    bootId: 'bench',
    monoMs: 0,
    tzOffsetMin: 0,
    by,
    event
  })
}
