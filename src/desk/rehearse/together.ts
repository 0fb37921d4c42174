// Several rehearsed pots, printed as one timeline, and where they want the one pair of hands at once.
import { basename } from 'node:path'
import { alarmBudget } from '../../core/pot/alarm-budget.ts'
import { canWaitMs } from '../../core/pot/collisions.ts'
import { evolve } from '../../core/pot/evolve.ts'
import type { PotState } from '../../core/pot/state.ts'
import { stepAt } from '../../core/protocol/tree.ts'
import type { Rehearsal } from '../../session/rehearsal.ts'
import type { HandsAct, HandsMeeting, TogetherPot } from '../../session/rehearse-together.ts'
import type { Told } from '../../session/rehearsed-pot.ts'
import { describeEvent } from '../describe-event.ts'
import { Complaint, START_MS } from './given.ts'
import { clock } from './timeline.ts'

const MIN_MS = 60_000

/** "dip-cycles", and "dip-cycles 2" where a file is named twice. */
export function namesOf(files: readonly string[]): string[] {
  const bare = files.map((file) => basename(file).replace(/\.(ya?ml|json|txt)$/i, ''))
  return bare.map((name, i) => {
    const nth = bare.slice(0, i).filter((other) => other === name).length + 1
    return nth === 1 ? name : `${name} ${nth}`
  })
}

/** How long after the first each pot starts; `after` names all but the first, in the order of the files. */
export function afterMsOf(after: string | undefined, files: readonly string[]): number[] {
  if (after === undefined) return files.map(() => 0)
  const minutes = after.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
  const wrong = minutes.some((min) => !(min >= 0 && min <= 100_000))
  if (wrong || minutes.length !== files.length - 1) {
    const example = files.slice(1).map((_, i) => 20 * (i + 1))
    throw new Complaint(
      `--after ${after}: the minutes after the first at which the others start, one for each, such as --after ${example.join(',')}`
    )
  }
  return [0, ...minutes.map((min) => Math.round(min * MIN_MS))]
}

type Pots = readonly TogetherPot[]

export function printTogether(pots: Pots, done: readonly Rehearsal[], meetings: readonly HandsMeeting[]): void {
  const width = Math.max(...pots.map(({ pot }) => pot.potId.length))
  console.log(`${pots.length} pots rehearsed together, by one pair of hands`)
  for (const { pot, programme, afterMs } of pots) {
    const { title, goodsMassG, coolingPerMin, roomC } = programme
    const start = afterMs === 0 ? '' : `, started after ${clock(afterMs)}`
    console.log(
      `${pot.potId.padEnd(width)}  ${title}, ${goodsMassG} g of goods, cooling with k = ${coolingPerMin} a minute in a room of ${roomC} °C${start}`
    )
  }
  console.log('')
  for (const { atMs, name, said } of linesOf(pots, done)) {
    console.log(`${clock(atMs - START_MS)}  ${name.padEnd(width)}  ${said}`)
  }
  console.log('')
  done.forEach(({ endedAfterMs, told }, i) => {
    const { sounds, mostAnHour } = alarmBudget(told)
    const { pot, afterMs } = pots[i] as TogetherPot
    const end = endedAfterMs === null ? 'stopped short' : `all steps done at ${clock(afterMs + endedAfterMs)}`
    console.log(`${pot.potId.padEnd(width)}  ${end}; ${sounds} sounds, at most ${mostAnHour} in an hour`)
  })
  console.log('')
  const met = gathered(meetings)
  console.log(met.length === 0 ? 'No two pots want hands at once.' : countOf(met.length))
  for (const each of met) console.log(metLine(each, pots, done))
}

function countOf(met: number): string {
  return `Hands are wanted by two pots at once, ${met === 1 ? 'one time' : `${met} times`}:`
}

/** What one act had to wait for: acts of another pot, one after the other. */
type Met = { firsts: HandsAct[]; second: HandsAct; atMs: number; waitedMs: number }

function gathered(meetings: readonly HandsMeeting[]): Met[] {
  const all = new Map<string, Met>()
  for (const { first, second, atMs, waitedMs } of meetings) {
    const key = [first.potId, second.potId, second.path, second.calledAtMs].join(' ')
    const known = all.get(key)
    if (known) known.firsts.push(first)
    else all.set(key, { firsts: [first], second, atMs, waitedMs })
  }
  return [...all.values()]
}

type Line = { atMs: number; name: string; said: string }

/** All pots in the order of time; what happens at one time, in the order of the files. */
function linesOf(pots: Pots, done: readonly Rehearsal[]): Line[] {
  return done
    .flatMap(({ told }, i) => {
      const { pot, programme } = pots[i] as TogetherPot
      return told.flatMap(({ atMs, event }): Line[] => {
        const said = describeEvent(event, (path) => stepAt(programme, path))
        return said ? [{ atMs, name: pot.potId, said }] : []
      })
    })
    .sort((a, b) => a.atMs - b.atMs)
}

function metLine({ firsts, second, atMs, waitedMs }: Met, pots: Pots, done: readonly Rehearsal[]): string {
  const canMs = canWaitOf(second, pots, done)
  const order = `${callsOf(firsts, pots)} first; ${callsOf([second], pots)} waits ${clock(waitedMs)}`
  if (canMs === null) return `${clock(atMs - START_MS)}  ${order}, and can wait`
  const lateMs = waitedMs - canMs
  const said = `${clock(atMs - START_MS)}  ${order}, and can wait ${clock(canMs)}`
  if (lateMs <= 0) return said
  // The other way round, those that came first would wait until this one is done.
  const untilMs = second.calledAtMs + second.handsMs
  const inTime = firsts.every((first) => {
    const firstCanMs = canWaitOf(first, pots, done)
    return firstCanMs === null || untilMs - first.calledAtMs <= firstCanMs
  })
  return `${said}: ${clock(lateMs)} late${inTime ? `; ${second.potId} first would suit both` : ''}`
}

/** How long an act can wait from its call on, before its protocol minds; null: as long as need be. */
function canWaitOf(act: HandsAct, pots: Pots, done: readonly Rehearsal[]): number | null {
  const at = pots.findIndex(({ pot }) => pot.potId === act.potId)
  const state = calledState(act, done[at]?.told ?? [])
  if (state.status !== 'running' && state.status !== 'held') return null
  const step = stepAt(state.programme, act.path)
  return step ? canWaitMs(state, step, act.calledAtMs) : null
}

/** The pot as it called. What was done at the same moment is not done yet. */
function calledState({ path, calledAtMs }: HandsAct, told: readonly Told[]): PotState {
  const call = told.findIndex(
    ({ atMs, event }) => atMs === calledAtMs && event.type === 'AlertRaised' && event.path === path
  )
  return told
    .slice(0, call + 1)
    .reduce<PotState>(
      (state, { event, ...stamp }, i) => evolve(state, event, { ...stamp, ref: { writerId: 'rehearsal', seq: i + 1 } }),
      { status: 'idle' }
    )
}

/** "dip-cycles (Dye in, Stir the bath)" */
function callsOf(acts: readonly HandsAct[], pots: Pots): string {
  const potId = acts[0]?.potId
  const programme = pots.find(({ pot }) => pot.potId === potId)?.programme
  const calls = acts.map(({ path }) => (programme && stepAt(programme, path)?.call) ?? path)
  return `${potId} (${calls.join(', ')})`
}
