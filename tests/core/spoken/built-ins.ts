// Every sentence that the built-in protocols can bring about: each is rehearsed, and at each moment all that stands and
// all that comes is put into words, prompt and late, in both modes and in two kinds of units.
import { readdirSync, readFileSync } from 'node:fs'
import { alertsDue } from '../../../src/core/pot/alerts-due.ts'
import { evolve } from '../../../src/core/pot/evolve.ts'
import { nextDue } from '../../../src/core/pot/next-due.ts'
import type { PotState } from '../../../src/core/pot/state.ts'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import type { Units } from '../../../src/core/quantity/index.ts'
import { alertSentence } from '../../../src/core/spoken/alert-sentence.ts'
import { type Cue, cuesOf } from '../../../src/core/spoken/cues.ts'
import { rehearse } from '../../../src/session/rehearsal.ts'
import { promptPerson } from '../../../src/session/rehearsal-person.ts'
import { identity, T0 } from '../pot/given.ts'

export const usUnits: Units = { temperature: 'F', volume: 'us', mass: 'us' }
const MIN = 60_000

export const builtIns = readdirSync('protocols').filter((file) => file.endsWith('.yaml'))

type Moment = { state: PotState; atMs: number }

export function rehearsed(file: string, values: Record<string, string> = {}): Moment[] {
  const text = readFileSync(`protocols/${file}`, 'utf8')
  const read = readProtocol(text)
  if (!read.ok) throw new Error(`${file} can't be read`)
  const skeins = [{ tag: 'S1', massG: 40 }]
  const made = programmeOf(read.protocol, { skeins, values, materials: {}, roomC: null, boilC: null })
  if (!made.ok) throw new Error(`${file} makes no programme`)
  const title = { title: file, text, version: '1', from: 'built-in' as const }
  // Nobody is there for two minutes after each call: time stands between the events.
  const person = { ...promptPerson, delayMs: () => 2 * MIN }
  const { told, stuck } = rehearse(made.programme, identity('plum', 'Plum'), title, T0, person)
  if (stuck !== null) throw new Error(`${file}: ${stuck}`)
  let state: PotState = { status: 'idle' }
  return told.map(({ event, atMs, commandId, by }, i) => {
    state = evolve(state, event, { atMs, commandId, by, ref: { writerId: 'w', seq: i + 1 } })
    return { state, atMs }
  })
}

export function alertsSaid(moments: Moment[], units: Units, guide: boolean): string[] {
  const said = new Set<string>()
  for (const { state, atMs } of moments) {
    if (state.status !== 'running') continue
    const dues = nextDue(state).map((due) => due.atMs)
    for (const at of [atMs, ...dues, ...dues.map((due) => due + 7 * MIN), atMs + 26 * 60 * MIN]) {
      for (const alert of alertsDue(state, at)) {
        for (const again of [false, true]) said.add(alertSentence(state, alert, { units, guide, again }))
      }
    }
  }
  return [...said]
}

export function cuesSaid(moments: Moment[], units: Units): Cue[] {
  const cues = new Map<string, Cue>()
  for (const { state, atMs } of moments) {
    const dues = nextDue(state).map((due) => due.atMs)
    for (const at of [atMs, ...dues.map((due) => due - 30_000)]) {
      for (const cue of cuesOf(state, at, units)) cues.set(cue.key, cue)
    }
  }
  return [...cues.values()].sort((a, b) => a.atMs - b.atMs)
}
