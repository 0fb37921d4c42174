// What is rehearsed: a protocol file read, made a programme for so much goods, and the pot that it would be.
import { readFileSync } from 'node:fs'
import type { PotIdentity, ProtocolText } from '../../core/pot/events.ts'
import type { Programme, Protocol } from '../../core/protocol/model.ts'
import { programmeOf } from '../../core/protocol/programme.ts'
import { readProtocol } from '../../core/protocol/read.ts'

/** What the person at the command line has to mend. */
export class Complaint extends Error {}

/** The simulated clock begins here, so that two rehearsals of one file print the same. */
export const START_MS = Date.UTC(2031, 5, 14, 9, 0, 0)

export type Given = { programme: Programme; pot: PotIdentity; protocol: ProtocolText }

/** `set`: answers to what the protocol asks at the start, as NAME=VALUE. Refuses with a Complaint. */
export function givenBy(file: string, potId: string, set: readonly string[], goods: string): Given {
  const text = readText(file)
  const protocol = protocolFrom(file, text)
  const programme = programmeFrom(protocol, set, goods)
  return { programme, pot: potFor(potId, programme, Number(goods)), protocol: textOf(protocol, text) }
}

export function readText(file: string): string {
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

function programmeFrom(protocol: Protocol, set: readonly string[], goods: string): Programme {
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

function potFor(potId: string, programme: Programme, massG: number): PotIdentity {
  return {
    potId,
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
