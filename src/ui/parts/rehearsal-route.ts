// A rehearsal as a route, so that any screen can lead to one, and a reload begins the same again:
// "#/rehearse/own/60/level-immersion/dip-gradient@20" is two protocols, the second twenty minutes later.
import type { RehearsalAnswers } from '../rehearsing.ts'

export type PlannedRehearsal = {
  answers: RehearsalAnswers
  speed: number
  pots: { protocolId: string; afterMin: number }[]
}

export const rehearsalSpeeds = [1, 10, 60, 300, 600] as const
const usual = { answers: 'own', speed: 60 } as const
const allAnswers: readonly string[] = ['own', 'prompt', 'slow', 'forgetful'] satisfies RehearsalAnswers[]
/** More pots than this no stove has. */
export const rehearsedPotsMost = 6
export const afterMinMost = 24 * 60

/** Protocols that are being written are rehearsed as they stand. */
const DRAFT = 'draft:'
export const idOfDraft = (draftId: string): string => DRAFT + draftId
export const draftOfId = (protocolId: string): string | null =>
  protocolId.startsWith(DRAFT) ? protocolId.slice(DRAFT.length) : null

export function rehearsalRoute({ answers, speed, pots }: PlannedRehearsal): string {
  const parts = pots.map(
    ({ protocolId, afterMin }) => encodeURIComponent(protocolId) + (afterMin > 0 ? `@${afterMin}` : '')
  )
  return ['#/rehearse', answers, speed, ...parts].join('/')
}

/** One protocol, answered by the dyer, sixty times as fast. */
export function rehearsalOfOne(protocolId: string): string {
  return rehearsalRoute({ ...usual, pots: [{ protocolId, afterMin: 0 }] })
}

/** Null: the route names no rehearsal, and one is to be chosen. */
export function plannedOf(route: string): PlannedRehearsal | null {
  const [, screen, answers = '', speed = '', ...parts] = route.split('/')
  const pots = parts.filter((part) => part !== '').slice(0, rehearsedPotsMost)
  if (screen !== 'rehearse' || pots.length === 0) return null
  return {
    answers: allAnswers.includes(answers) ? (answers as RehearsalAnswers) : usual.answers,
    speed: rehearsalSpeeds.find((known) => String(known) === speed) ?? usual.speed,
    pots: pots.map((part) => {
      const [id = '', after = '0'] = part.split('@')
      return { protocolId: plain(id), afterMin: Math.min(afterMinMost, Math.max(0, Math.round(Number(after)) || 0)) }
    })
  }
}

function plain(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}
