// npm run rehearse -- FILE... [--set NAME=VALUE ...] [--answers FILE] [--goods GRAMS] [--json]
import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { parse } from 'yaml'
import { alarmBudget, SOUNDS_AN_HOUR_MOST } from '../core/pot/alarm-budget.ts'
import { ENTRY_VERSION } from '../core/pot/entry.ts'
import type { Answer, PotIdentity, ProtocolText } from '../core/pot/events.ts'
import { sealEntry } from '../core/pot/write-entry.ts'
import type { Grade, Programme, Protocol, Question, Step } from '../core/protocol/model.ts'
import { grades } from '../core/protocol/model.ts'
import { programmeOf } from '../core/protocol/programme.ts'
import { readProtocol } from '../core/protocol/read.ts'
import { stepAt } from '../core/protocol/tree.ts'
import { type Rehearsal, rehearse } from '../session/rehearsal.ts'
import { promptPerson, type RehearsalPerson } from '../session/rehearsal-person.ts'
import type { Told } from '../session/rehearsed-pot.ts'
import { describeEvent } from './describe-event.ts'

/** The simulated clock begins here, so that two rehearsals of one file print the same. */
const START_MS = Date.UTC(2031, 5, 14, 9, 0, 0)
const GOODS_MASS_G = 100

class Complaint extends Error {}

function main(argv: string[]): void {
  const { values, positionals } = parseArgs({
    args: argv,
    allowPositionals: true,
    options: {
      set: { type: 'string', multiple: true, default: [] },
      answers: { type: 'string' },
      goods: { type: 'string', default: String(GOODS_MASS_G) },
      json: { type: 'boolean', default: false }
    }
  })
  const [file, ...more] = positionals
  if (!file || more.length > 0) {
    throw new Complaint(
      'Name one protocol file: npm run rehearse -- FILE [--set NAME=VALUE ...] [--answers FILE] [--json]'
    )
  }
  const text = readText(file)
  const protocol = protocolFrom(file, text)
  const programme = programmeFrom(protocol, values.set, values.goods)
  const person = values.answers === undefined ? promptPerson : personFrom(values.answers)
  const done = rehearse(programme, potFor(programme, Number(values.goods)), textOf(protocol, text), START_MS, person)
  if (values.json) printJournal(done.told)
  else printTimeline(programme, done)
  if (done.stuck) throw new Complaint(`The rehearsal stopped short: ${done.stuck}`)
}

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    throw new Complaint(`${file}: can't be read (${(error as NodeJS.ErrnoException).code ?? error})`)
  }
}

function protocolFrom(file: string, text: string): Protocol {
  const read = readProtocol(text)
  if (read.ok) return read.protocol
  const lines = read.problems.map((p) => `${file}:${p.line}:${p.column} ${p.what} (${p.instead})`)
  throw new Complaint(lines.join('\n'))
}

function programmeFrom(protocol: Protocol, set: string[], goods: string): Programme {
  const massG = Number(goods)
  if (!(massG > 0)) throw new Complaint(`--goods ${goods}: a mass in grams, such as --goods 100`)
  const values: Record<string, string> = {}
  for (const pair of set) {
    const at = pair.indexOf('=')
    if (at < 1) throw new Complaint(`--set ${pair}: write NAME=VALUE`)
    const name = pair.slice(0, at)
    if (!protocol.inputs.some((input) => input.id === name)) {
      const known = protocol.inputs.map((input) => input.id).join(', ') || 'none'
      throw new Complaint(`--set ${name}: the protocol asks for no such input (it asks for: ${known})`)
    }
    values[name] = pair.slice(at + 1)
  }
  const skeins = [{ tag: 'S1', massG }]
  const made = programmeOf(protocol, { skeins, values, materials: {}, roomC: null, boilC: null })
  if (made.ok) return made.programme
  throw new Complaint(made.problems.map((p) => `${p.field}: ${p.what} (${p.instead})`).join('\n'))
}

/** Answers by step id or path, each a word, a number or a list of them used in turn. */
function personFrom(file: string): RehearsalPerson {
  const raw: unknown = parse(readText(file), { maxAliasCount: 0 })
  if (raw === null || typeof raw !== 'object' || Array.isArray(raw)) {
    throw new Complaint(`${file}: write a map of step id to answer, such as "clear: [half, trace]"`)
  }
  const left = new Map(Object.entries(raw).map(([key, given]) => [key, Array.isArray(given) ? [...given] : [given]]))
  return {
    delayMs: () => 0,
    answer(step, question) {
      const keys = [step.path, step.id, ...step.path.split('/').map((part) => part.replace(/\[\d+\]$/, ''))]
      const key = keys.find((k) => (left.get(k)?.length ?? 0) > 0)
      return key === undefined ? null : answerOf(file, step, question, left.get(key)?.shift())
    }
  }
}

function answerOf(file: string, step: Step, question: Question, given: unknown): Answer {
  const word = String(given)
  const number = Number(given)
  const bad = (instead: string): Complaint =>
    new Complaint(`${file}: ${step.path} can't be answered "${word}": ${instead}`)
  switch (question.kind) {
    case 'grade':
      if (!(grades as readonly string[]).includes(word)) throw bad(`one of ${grades.join(', ')}`)
      return { kind: 'grade', grade: word as Grade, hue: null }
    case 'temperature':
      if (!Number.isFinite(number)) throw bad('a temperature in °C')
      return { kind: 'temperature', tempC: number }
    case 'ph':
      if (!Number.isFinite(number)) throw bad('a pH such as 4.5')
      return { kind: 'ph', reading: { kind: 'value', ph: number } }
    case 'number':
      if (!Number.isFinite(number)) throw bad('a number')
      return { kind: 'number', value: number, unit: question.unit }
    case 'choice':
      return { kind: 'choice', answer: word }
    case 'text':
      return { kind: 'text', text: word }
  }
}

function potFor(programme: Programme, massG: number): PotIdentity {
  return {
    potId: 'rehearsal',
    batchName: `Rehearsal of ${programme.title}`,
    colourway: 'Rehearsal',
    letter: 'A',
    burner: 'none',
    colour: '#285f57',
    skeins: [{ tag: 'S1', massG }],
    fibre: 'wool',
    parentBatchId: null,
    bath: { bathId: 'rehearsal', number: 1, parentBatchId: null, unknownDyeLeft: false },
    by: null
  }
}

function textOf(protocol: Protocol, text: string): ProtocolText {
  return { title: protocol.title, text, version: 'rehearsal', from: 'file' }
}

function printTimeline(programme: Programme, done: Rehearsal): void {
  const { roomC, coolingPerMin } = programme
  console.log(`${programme.title}: rehearsed with ${programme.goodsMassG} g of goods`)
  console.log(
    `Heating at the stated rates; cooling by Newton's law, k = ${coolingPerMin} a minute, room ${roomC} °C.\n`
  )
  for (const { atMs, event } of done.told) {
    const said = describeEvent(event, (path) => stepAt(programme, path))
    if (said) console.log(`${clock(atMs - START_MS)}  ${said}`)
  }
  if (done.endedAfterMs !== null) console.log(`\nAll steps done after ${clock(done.endedAfterMs)} (h:mm:ss).`)
  const { sounds, mostAnHour } = alarmBudget(done.told)
  console.log(`Sounds: ${sounds} in all, at most ${mostAnHour} in an hour.`)
  if (mostAnHour > SOUNDS_AN_HOUR_MOST) {
    console.log(`More than ${SOUNDS_AN_HOUR_MOST} sounds in an hour are no longer heard: make fewer or longer waits.`)
  }
}

function clock(ms: number): string {
  const s = Math.round(ms / 1000)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${Math.floor(s / 3600)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`
}

function printJournal(told: Told[]): void {
  for (const [i, { atMs, commandId, by, event }] of told.entries()) {
    const after = i === 0 ? null : { writerId: 'rehearsal', seq: i }
    const entry = sealEntry({
      v: ENTRY_VERSION,
      streamId: 'pot/rehearsal',
      writerId: 'rehearsal',
      seq: i + 1,
      after,
      commandId,
      atMs,
      recordedAtMs: atMs,
      bootId: 'rehearsal',
      monoMs: atMs - START_MS,
      tzOffsetMin: 0,
      by,
      event
    })
    console.log(JSON.stringify(entry))
  }
}

try {
  main(process.argv.slice(2))
} catch (error) {
  if (!(error instanceof Complaint) && !(error instanceof TypeError && 'code' in error)) throw error
  console.error((error as Error).message)
  process.exitCode = 1
}
