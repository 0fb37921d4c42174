// The journal of a batch as deeds in the order of their real times, with the waits and rises that went on meanwhile.
import type { Entry } from '../../pot/entry.ts'
import type { PotEvent } from '../../pot/events.ts'
import type { Programme, Step } from '../../protocol/model.ts'
import { stepAt } from '../../protocol/tree.ts'
import { showDuration } from '../../quantity/index.ts'
import { eventWords } from '../event-words.ts'
import type { Materials } from './materials.ts'
import { clean, step, type Written } from './text.ts'
import { type Act, actOf, answerText, askOf, deedOf } from './words.ts'

type PotEntry = Entry<PotEvent>

/** What makes no step and no comment. */
const silent = [
  'PotStarted',
  'Ended',
  'RoundStarted',
  'RoundsEnded',
  'MomentMarked',
  'DueMoved',
  'Looked',
  'AlertRaised',
  'MediaTrimmed',
  'CautionShown',
  'ClockShifted',
  'Withdrawn',
  'Corrected',
  'StepsDone',
  'Finished'
] as const
type Silent = (typeof silent)[number]

function isSilent(event: PotEvent): event is Extract<PotEvent, { type: Silent }> {
  return (silent as readonly string[]).includes(event.type)
}

/** A rise of the bath. `toC` null: nobody read where it ended. */
export type Rise = { startMs: number; endMs: number; fromC: number; toC: number | null; say: string }

/** `order`: the order of writing, where times are equal. */
export type Deed = { atMs: number; order: number } & (
  | { kind: 'act'; act: Act }
  | { kind: 'comment'; say: string }
  | { kind: 'rise'; rise: Rise }
  | { kind: 'off'; act: Act }
)

export type Waited = { startMs: number; endMs: number; step: Step }

export type Told = { deeds: Deed[]; waits: Waited[]; endMs: number; heatLeftOn: boolean }

type HeatOn = { startMs: number; order: number; step: Step | null; level: string | null }

/** Entries that stand, in the order of writing, what came before a set clock told on the clock of afterwards. */
export function toldOf(entries: readonly PotEntry[], programme: Programme, materials: Materials): Told {
  const teller = new Teller(entries, programme, materials)
  for (const [i, entry] of entries.entries()) {
    if (entry.event.type === 'Finished' || entry.event.type === 'Aborted') {
      teller.hear(entry, i)
      break
    }
    teller.hear(entry, i)
  }
  return teller.told()
}

class Teller {
  readonly #programme: Programme
  readonly #materials: Materials
  readonly #deeds: Deed[] = []
  readonly #waits: Waited[] = []
  readonly #readings: { atMs: number; tempC: number }[] = []
  readonly #open = new Map<string, { step: Step; startMs: number; side: boolean }>()
  /** By command: what it brought about, so that one deed is told once. */
  readonly #with = new Map<string, PotEvent[]>()
  /** How much a clock set later moves each entry. */
  readonly #shiftMs: number[]
  #heat: HeatOn | null = null
  #heatOn = false
  #lastMs = 0

  constructor(entries: readonly PotEntry[], programme: Programme, materials: Materials) {
    this.#programme = programme
    this.#materials = materials
    for (const { commandId, event } of entries) {
      const events = this.#with.get(commandId)
      if (events) events.push(event)
      else this.#with.set(commandId, [event])
    }
    this.#shiftMs = shiftsOf(entries)
  }

  told(): Told {
    this.#endRise(this.#lastMs, null)
    const deeds = sortedByTime(this.#deeds)
    const ends = [
      ...deeds.map((deed) => (deed.kind === 'rise' ? deed.rise.endMs : deed.atMs)),
      ...this.#waits.map((w) => w.endMs)
    ]
    return { deeds, waits: this.#waits, endMs: ends.length > 0 ? Math.max(...ends) : 0, heatLeftOn: this.#heatOn }
  }

  hear(entry: PotEntry, index: number): void {
    const { event, commandId } = entry
    if (isSilent(event)) return
    const atMs = entry.atMs + (this.#shiftMs[index] ?? 0)
    this.#lastMs = Math.max(this.#lastMs, atMs)
    const together = this.#with.get(commandId) ?? []
    switch (event.type) {
      case 'StepStarted':
        this.#begin(event, atMs)
        return
      case 'StepClosed':
        this.#close(event, atMs)
        return
      case 'ConditionMet':
        this.#met(event, atMs)
        return
      case 'Dosed':
        this.#dosed(event, atMs, together)
        return
      case 'Answered':
        this.#answered(event, atMs)
        return
      case 'HeatSet':
        this.#heatSet(event, atMs)
        return
      case 'TemperatureRead':
        this.#temperature(event, atMs, together)
        return
      case 'PhRead':
        if (event.path === null) this.#reading(atMs, 'ph', measure('pH'), event)
        return
      case 'Judged':
        if (event.path === null) this.#reading(atMs, 'residue', judge(event.of), event)
        return
      case 'YarnMoved':
        if (event.path === null) this.#yarn(event, atMs)
        return
      case 'ToppedUp':
        this.#toppedUp(event, atMs)
        return
      case 'DeedDone':
        this.#deeds.push({ kind: 'act', atMs, order: this.#deeds.length, act: deedOf(event.word, event.say) })
        return
      case 'PhotoNoted':
        this.#photo(event, atMs)
        return
      case 'Resumed':
      case 'Held':
      case 'TroubleBegan':
      case 'TroubleEnded':
      case 'WentOffProtocol':
      case 'GapBroken':
      case 'DoseWentElsewhere':
      case 'SkeinsSwapped':
      case 'BurnerChanged':
      case 'HandedOver':
      case 'NoteWritten':
      case 'ResultTold':
      case 'VoiceNoted':
      case 'ChoiceTaken':
      case 'Aborted':
        this.#comment(atMs, eventWords(event, this.#programme))
        return
    }
  }

  #temperature(
    event: Extract<PotEvent, { type: 'TemperatureRead' }>,
    atMs: number,
    together: readonly PotEvent[]
  ): void {
    this.#readings.push({ atMs, tempC: event.tempC })
    if (together.some(({ type }) => type === 'Answered' || type === 'TroubleEnded')) return
    if (together.some((one) => one.type === 'StepClosed' && stepAt(this.#programme, one.path)?.ramp)) return
    if (this.#heat !== null) this.#comment(atMs, eventWords(event, this.#programme))
    else this.#reading(atMs, 'temperature', measure('temperature'), event)
  }

  #toppedUp(event: Extract<PotEvent, { type: 'ToppedUp' }>, atMs: number): void {
    const amount = { value: event.volumeML, unit: 'mL', of: 'water', asEntered: '' } as const
    this.#comment(atMs, eventWords(event, this.#programme))
    this.#act(atMs, this.#materials.added(amount, null, false).written)
  }

  #act(atMs: number, written: Written): void {
    this.#deeds.push({ kind: 'act', atMs, order: this.#deeds.length, act: { written, rest: null, restFields: {} } })
  }

  #comment(atMs: number, say: string): void {
    if (say !== '') this.#deeds.push({ kind: 'comment', atMs, order: this.#deeds.length, say })
  }

  #begin({ path, side }: Extract<PotEvent, { type: 'StepStarted' }>, atMs: number): void {
    const begun = stepAt(this.#programme, path)
    if (!begun) return
    this.#open.set(path, { step: begun, startMs: atMs, side })
    if (begun.ramp && this.#heat?.step == null) {
      this.#endRise(atMs, null)
      this.#heat = { startMs: atMs, order: this.#deeds.length, step: begun, level: null }
      this.#heatOn = true
    }
  }

  #close(event: Extract<PotEvent, { type: 'StepClosed' }>, atMs: number): void {
    const open = this.#open.get(event.path)
    if (!open) return
    this.#open.delete(event.path)
    const { step: closed, startMs, side } = open
    if (closed.ramp && this.#heat?.step === closed)
      this.#endRise(atMs, event.how === 'reading' ? this.#lastReading(startMs) : null)
    if (event.how === 'skipped') {
      this.#comment(atMs, `Left out: ${closed.knot}${event.reason ? ` (${event.reason})` : ''}`)
      return
    }
    if (closed.wait) {
      if (!closed.open) this.#waits.push({ startMs, endMs: atMs, step: closed })
      if (event.how === 'early') this.#comment(atMs, eventWords(event, this.#programme))
      return
    }
    if (closed.behaviour !== 'act') return
    this.#lateness(event, atMs)
    const act = actOf(closed, side)
    if (!act) return
    const off = closed.heat === 'off'
    if (off) this.#endRise(atMs, null)
    this.#deeds.push({ kind: off ? 'off' : 'act', atMs, order: this.#deeds.length, act })
  }

  #lateness({ lateMs, reason }: Extract<PotEvent, { type: 'StepClosed' }>, atMs: number): void {
    if (lateMs > 0) this.#comment(atMs, `This came ${showDuration(Math.round(lateMs / 1000) * 1000)} late.`)
    if (reason) this.#comment(atMs, reason)
  }

  /** What a person saw ends a wait: asked again as a question, at its time. */
  #met({ path, index }: Extract<PotEvent, { type: 'ConditionMet' }>, atMs: number): void {
    const waiting = this.#open.get(path)?.step
    const until = waiting?.wait?.until[index]
    if (!waiting || waiting.open || until?.kind !== 'person') return
    if (waiting.word !== 'wait' && waiting.word !== 'hold') return
    this.#act(atMs, step('check', { question: clean(`${until.ask}?`, 80, 'Has it come?') }, 'question'))
  }

  #dosed(event: Extract<PotEvent, { type: 'Dosed' }>, atMs: number, together: readonly PotEvent[]): void {
    const { path, added, of, planned, fromPotId } = event
    const dosed = path === null ? null : stepAt(this.#programme, path)
    const closed = together.find((one) => one.type === 'StepClosed')
    if (closed?.type === 'StepClosed') this.#lateness(closed, atMs)
    if (!(added.value > 0)) {
      this.#comment(atMs, `${of}: nothing went in.`)
      return
    }
    const into =
      / into (.{1,40})$/.exec(dosed?.call ?? '')?.[1] ??
      /^Fill (?!the bath$)(.{1,40})$/.exec(dosed?.call ?? '')?.[1] ??
      null
    const { written, say } = this.#materials.added({ ...added, of }, into, dosed?.word === 'fill')
    const differs = planned !== null && planned.unit === added.unit && Math.abs(planned.value - added.value) > 1e-6
    const more = [
      say,
      differs ? `planned were ${planned.value} ${planned.unit}` : '',
      fromPotId === null ? '' : 'meant for another pot'
    ]
    this.#comment(
      atMs,
      [`${of}`, ...more].filter(Boolean).length > 1 ? `${of}: ${more.filter(Boolean).join(', ')}` : ''
    )
    this.#act(atMs, written)
  }

  #answered({ path, answer }: Extract<PotEvent, { type: 'Answered' }>, atMs: number): void {
    const asked = stepAt(this.#programme, path)
    const owner = path.endsWith('/ask') && asked?.question?.kind === 'choice' && answer.kind === 'choice'
    // The way that was taken stands below: the question itself is only told.
    if (owner && this.#isChoice(path)) return
    if (asked?.ramp) return
    const until = asked?.wait?.until.find((one) => one.kind === 'judgement')
    const question = asked?.question ?? (until?.kind === 'judgement' ? until.question : null)
    this.#comment(atMs, answerText(answer))
    if (asked && question && question.kind === answer.kind) this.#act(atMs, askOf(asked, question))
    else if (answer.kind === 'temperature' && asked && asked.records.length === 0) {
      this.#act(atMs, measure('temperature'))
    }
  }

  #isChoice(askPath: string): boolean {
    const owner = this.#programme.steps.length > 0 ? askPath.slice(0, -'/ask'.length) : ''
    // A round of a loop ends in its number, a choice in its id.
    return !owner.endsWith(']')
  }

  /** A reading that a step asked for before it could be closed is asked for by that step again. */
  #reading(atMs: number, item: Step['records'][number], written: Written, event: PotEvent): void {
    this.#comment(atMs, eventWords(event, this.#programme))
    if (!this.#isRecordOfOpen(item)) this.#act(atMs, written)
  }

  #isRecordOfOpen(item: Step['records'][number]): boolean {
    return [...this.#open.values()].some(({ step: one }) => one.behaviour !== 'ask' && one.records.includes(item))
  }

  #photo({ what, path }: Extract<PotEvent, { type: 'PhotoNoted' }>, atMs: number): void {
    const free = path !== null && stepAt(this.#programme, path)?.open === true
    if (free) this.#act(atMs, step('photo', { what: clean(what, 60, 'the pot') }, 'what'))
    else this.#comment(atMs, `Photo: ${what}`)
  }

  #yarn({ place, tags }: Extract<PotEvent, { type: 'YarnMoved' }>, atMs: number): void {
    if (tags.length > 0) this.#comment(atMs, tags.join(', '))
    this.#act(atMs, step(place === 'in' ? 'enter' : 'lift'))
  }

  #heatSet({ on, level, path }: Extract<PotEvent, { type: 'HeatSet' }>, atMs: number): void {
    const was = this.#heatOn
    this.#heatOn = on
    if (path !== null) return
    if (!on) {
      this.#endRise(atMs, null)
      this.#deeds.push({
        kind: 'off',
        atMs,
        order: this.#deeds.length,
        act: { written: step('heat', { to: 'off' }, 'to'), rest: null, restFields: {} }
      })
    } else if (was) this.#comment(atMs, `Heat ${level ?? 'changed'}.`)
    else this.#heat = { startMs: atMs, order: this.#deeds.length, step: null, level }
  }

  #lastReading(sinceMs: number): number | null {
    const last = this.#readings.at(-1)
    return last && last.atMs >= sinceMs ? last.tempC : null
  }

  /** The heat rose until now, at the latest. Without a step that says so, it rose until the last reading that was higher. */
  #endRise(atMs: number, reachedC: number | null): void {
    const heat = this.#heat
    this.#heat = null
    if (!heat) return
    const { startMs, step: ramp } = heat
    const before = this.#readings.findLast((one) => one.atMs <= startMs && one.atMs > startMs - FRESH_MS)
    const fromC = before?.tempC ?? ramp?.ramp?.expectedFromC ?? this.#programme.roomC
    const risen = reachedC === null ? risingTo(this.#readings, startMs, fromC) : { atMs, tempC: reachedC }
    const endMs = ramp ? atMs : (risen?.atMs ?? startMs)
    const toC = reachedC ?? risen?.tempC ?? (ramp?.ramp ? guessed(ramp.ramp, fromC, atMs - startMs) : null)
    const unread = reachedC === null && risen === null
    const say = unread
      ? 'How warm it got was not read: write the right temperature here.'
      : heat.level
        ? `Ring ${heat.level}.`
        : ''
    const rise = { startMs, endMs: Math.max(startMs, endMs), fromC, toC, say }
    this.#deeds.push({ kind: 'rise', atMs: startMs, order: heat.order, rise })
  }
}

const measure = (what: string): Written => step('measure', { what }, 'what')
const judge = (of: string): Written => step('check', { grade: clean(of, 40, 'bath') })

/** A reading older than this no longer tells the bath's temperature: pot/timing.ts. */
const FRESH_MS = 20 * 60_000
/** Less is a thermometer's error, not a rise. Common practice, no source. */
const RISE_C = 2

/** The last reading of a run that rises from the start of the heat. */
function risingTo(
  readings: readonly { atMs: number; tempC: number }[],
  startMs: number,
  fromC: number
): { atMs: number; tempC: number } | null {
  let top: { atMs: number; tempC: number } | null = null
  for (const reading of readings) {
    if (reading.atMs <= startMs) continue
    if (reading.tempC < (top?.tempC ?? fromC) + RISE_C) break
    top = reading
  }
  return top
}

function guessed({ lowC, cPerMin }: NonNullable<Step['ramp']>, fromC: number, ms: number): number {
  return Math.min(lowC, fromC + (cPerMin * ms) / 60_000)
}

function shiftsOf(entries: readonly PotEntry[]): number[] {
  const shifts: number[] = new Array(entries.length).fill(0)
  let later = 0
  for (let i = entries.length - 1; i >= 0; i--) {
    shifts[i] = later
    const event = entries[i]?.event
    if (event?.type === 'ClockShifted') later += event.byMs
  }
  return shifts
}

/** A rise is told when it ends, and stands where it began. */
function sortedByTime(deeds: readonly Deed[]): Deed[] {
  const rank = (deed: Deed): number => (deed.kind === 'rise' ? 0 : 1)
  return [...deeds].sort((a, b) => a.atMs - b.atMs || a.order - b.order || rank(a) - rank(b))
}
