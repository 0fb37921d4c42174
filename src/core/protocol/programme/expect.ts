// What is expected while a programme is worked out: the time on the likely way, the bath's temperature, the heat.
import { newtonC } from '../../chemistry/heating/laws.ts'
import { coolingMin, usualCoolingPerMin } from '../cooling.ts'
import type { Draft, WaitDraft } from '../draft.ts'
import type { LateRule, Span, Until } from '../model.ts'
import { toleranceC } from '../schema/hold-at.ts'
import { noTime, span } from '../span.ts'
import { askedByRamp } from './over-boil.ts'

const minuteMs = 60_000
/** A person's look or a judgement, where the writer says no time. Common practice, no source. */
const lookMs = 10 * minuteMs
/** Never reached by cooling in this room: overnight. */
const overnightMs = 12 * 60 * minuteMs
/** A ring without a stated rate. Common practice, no source. */
const usualCPerMin = 2

export type Expected = {
  nowMs: number
  bathC: number
  heatOn: boolean
  /** What the last ramp was meant to reach, whether or not an open pot gets there; null: none, or the heat is off. */
  askedC: number | null
  roomC: number
  /** When each moment comes on the likely way. */
  moments: Map<string, number>
}

export function copyOf(expected: Expected): Expected {
  return { ...expected, moments: new Map(expected.moments) }
}

export type RampReady = { lowC: number; highC: number | null; cPerMin: number; expectedFromC: number }

/** The clock time of one act, wait, question or ramp that begins now. */
export function clockOf(draft: Draft, ramp: RampReady | null, hands: Span, late: LateRule | null, now: Expected): Span {
  if (ramp) {
    const likelyMs = (Math.max(0, ramp.lowC - ramp.expectedFromC) / ramp.cPerMin) * minuteMs
    // Rings differ: a fifth faster, half as slow again. Common practice, no source.
    return rounded(span(likelyMs * 0.8, likelyMs, likelyMs * 1.5))
  }
  return draft.wait ? rounded(waitSpan(draft.wait, late, now)) : hands
}

function waitSpan(wait: WaitDraft, late: LateRule | null, now: Expected): Span {
  const parts = wait.until.map((until) => untilSpan(until, wait, now))
  if (wait.forMs !== null) parts.push(timeSpan(wait, wait.forMs, late, now))
  return parts.reduce(
    (a, b) => ({
      leastMs: Math.max(a.leastMs, b.leastMs),
      likelyMs: Math.max(a.likelyMs, b.likelyMs),
      mostMs: Math.max(a.mostMs, b.mostMs)
    }),
    noTime
  )
}

function timeSpan(wait: WaitDraft, forMs: number, late: LateRule | null, now: Expected): Span {
  // "at least 30 min" has no end: half as long again is a guess.
  const mostMs = forMs + (wait.graceMs ?? forMs / 2)
  const since = wait.from === null ? now.nowMs : (now.moments.get(wait.from) ?? now.nowMs)
  const likelyMs = Math.max(wait.from === null ? 0 : wait.leastMs, since + forMs - now.nowMs)
  return span(late === 'absorb' ? wait.leastMs : likelyMs, likelyMs, mostMs)
}

function untilSpan(until: Until, wait: WaitDraft, now: Expected): Span {
  switch (until.kind) {
    case 'temperature': {
      const targetC = until.going === 'down' ? until.highC : until.lowC
      const likelyMs = wait.expectMs ?? temperatureMs(until.going, targetC ?? now.bathC, wait.coolCPerMin, now)
      return span(likelyMs * 0.7, likelyMs, likelyMs * 1.6)
    }
    case 'moment': {
      const likelyMs = Math.max(0, (now.moments.get(until.name) ?? now.nowMs + (wait.expectMs ?? 0)) - now.nowMs)
      return span(0, likelyMs, likelyMs * 1.5)
    }
    case 'person':
    case 'judgement': {
      const likelyMs = wait.expectMs ?? lookMs
      return span(0, likelyMs, likelyMs * 3)
    }
  }
}

function temperatureMs(going: 'up' | 'down', targetC: number, coolCPerMin: number | undefined, now: Expected): number {
  if (going === 'up') return (Math.max(0, targetC - now.bathC) / usualCPerMin) * minuteMs
  if (coolCPerMin !== undefined) return (Math.max(0, now.bathC - targetC) / coolCPerMin) * minuteMs
  const min = coolingMin(now.bathC, targetC, now.roomC, usualCoolingPerMin)
  return min === null ? overnightMs : min * minuteMs
}

function rounded({ leastMs, likelyMs, mostMs }: Span): Span {
  return { leastMs: Math.round(leastMs), likelyMs: Math.round(likelyMs), mostMs: Math.round(mostMs) }
}

/** Lets the likely time of a step pass. */
export function pass(now: Expected, draft: Draft, ramp: RampReady | null, clock: Span): void {
  now.nowMs += clock.likelyMs
  if (draft.heat === 'off') {
    now.heatOn = false
    now.askedC = null
  }
  if (draft.dose?.fills && draft.dose.into === null && draft.dose.atC !== null) now.bathC = draft.dose.atC
  if (ramp) {
    now.bathC = Math.max(now.bathC, ramp.lowC)
    now.heatOn = true
    now.askedC = draft.ramp && askedByRamp(draft.ramp)
    return
  }
  if (draft.wait?.coolCPerMin !== undefined) {
    now.bathC = Math.max(now.roomC, now.bathC - (draft.wait.coolCPerMin * clock.likelyMs) / minuteMs)
    return
  }
  const kept = draft.setPoint?.range
  const aimC = draft.setPoint?.aimC ?? null
  if (draft.wait && aimC !== null && Math.abs(now.bathC - aimC) <= toleranceC) now.bathC = aimC
  else if (draft.wait && kept && (kept.lowC !== null || kept.highC !== null)) {
    now.bathC = Math.min(Math.max(now.bathC, kept.lowC ?? now.bathC), kept.highC ?? Number.POSITIVE_INFINITY)
  } else if (!now.heatOn) {
    const newton = { fromC: now.bathC, towardsC: now.roomC, perMin: usualCoolingPerMin }
    now.bathC = newtonC(newton, clock.likelyMs / minuteMs)
  }
}
