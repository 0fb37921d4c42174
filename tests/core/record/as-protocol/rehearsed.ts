// A pot rehearsed, its record, and the acts of a rehearsal as they can be compared.
import type { Entry } from '../../../../src/core/pot/entry.ts'
import type { PotEvent } from '../../../../src/core/pot/events.ts'
import type { Programme, Step } from '../../../../src/core/protocol/model.ts'
import { stepAt } from '../../../../src/core/protocol/tree.ts'
import { type MadeProtocol, protocolOfRecord } from '../../../../src/core/record/protocol-of-record.ts'
import { recordOf } from '../../../../src/core/record/record-of.ts'
import { rehearse } from '../../../../src/session/rehearsal.ts'
import { promptPerson, type RehearsalPerson } from '../../../../src/session/rehearsal-person.ts'
import type { Told } from '../../../../src/session/rehearsed-pot.ts'
import { identity, T0 } from '../../pot/given.ts'
import { programmeFrom } from '../../protocol/made.ts'

export const text = { title: 'Rehearsed', text: 'strandline: 1', version: 'v1', from: 'file' as const }

export function entriesOf(told: readonly Told[]): Entry<PotEvent>[] {
  return told.map((one, i) => ({
    v: 2,
    streamId: 'pot/pot-a',
    writerId: 'rehearsal',
    seq: i + 1,
    after: null,
    recordedAtMs: one.atMs,
    bootId: 'b',
    monoMs: 0,
    tzOffsetMin: 0,
    crc: '',
    ...one
  }))
}

export function run(programme: Programme, person: RehearsalPerson = promptPerson): Told[] {
  const done = rehearse(programme, identity(), text, T0, person)
  if (done.stuck) throw new Error(`stuck: ${done.stuck}`)
  return done.told
}

export function madeOf(entries: readonly Entry<PotEvent>[]): MadeProtocol {
  const record = recordOf(entries)
  if (!record) throw new Error('no record')
  return protocolOfRecord(record, entries)
}

export type Done = { atMs: number; what: string }

/** What hands did and eyes judged, in order: turning the ring up, reading a rise and the clock's ends of waits aside. */
export function actsOf(told: readonly Told[], programme: Programme): Done[] {
  const rising = new Set<string>()
  const answered = new Set(told.flatMap((one) => (one.event.type === 'Answered' ? [one.commandId] : [])))
  const acts = told.flatMap(({ event, atMs, commandId }): Done[] => {
    const step = 'path' in event && event.path !== null ? stepAt(programme, event.path) : null
    if (event.type === 'StepStarted' && step?.ramp) rising.add(event.path)
    // The reading that ends a rise comes before the end.
    if (event.type === 'TemperatureRead' && rising.size === 0 && !answered.has(commandId)) {
      return [{ atMs, what: 'temperature' }]
    }
    if (event.type === 'StepClosed' && step?.ramp) rising.delete(event.path)
    if (event.type === 'Dosed') return [{ atMs, what: `${event.added.value} ${event.added.unit} of ${event.of}` }]
    if (event.type === 'Answered' && isWay(event.path, step)) return []
    if (event.type === 'Answered' && step?.question) return [{ atMs, what: questionOf(step) }]
    if (event.type === 'Answered' && event.answer.kind === 'grade') return [{ atMs, what: 'judge bath' }]
    if (event.type === 'ConditionMet') return seen(step, event.index).map((what) => ({ atMs, what }))
    if (event.type === 'StepClosed' && step?.behaviour === 'act' && !isRing(step)) {
      return [{ atMs, what: step.heat === 'off' ? 'heat off' : plainWords(step.call) }]
    }
    return []
  })
  const firstMs = acts[0]?.atMs ?? 0
  return acts.map((act) => ({ ...act, atMs: act.atMs - firstMs }))
}

/** What a person saw at the end of a wait. */
function seen(step: Step | null, index: number): string[] {
  const until = step?.wait?.until[index]
  return until?.kind === 'person' && (step?.word === 'wait' || step?.word === 'hold') ? [`${until.ask}?`] : []
}

/** The question of a choice: the way that was taken is what is done again. */
const isWay = (path: string, step: Step | null): boolean =>
  step?.question?.kind === 'choice' && path.endsWith('/ask') && !path.endsWith(']/ask')

const plainWords = (call: string): string => call.replace(/\s+/g, ' ').trim().toLowerCase()

const isRing = (step: Step): boolean => step.word === 'heat' && step.heat === null

function questionOf({ question }: Step): string {
  if (question?.kind === 'grade') return `judge ${question.of}`
  return question && 'ask' in question ? question.ask : (question?.kind ?? '')
}

export function again(made: MadeProtocol): { programme: Programme; told: Told[] } {
  const programme = programmeFrom(made.text)
  return { programme, told: run(programme) }
}
