import { dayMs } from './day.ts'

const DAY_MS = 86_400_000

/** Days from the day something was made to the day it is used, both as "2031-06-14" on the dyer's own calendar; null: not
 * known. Never less than 0: who made it after midnight abroad did not make it tomorrow. No end of life is told: no
 * authoritative one was found for any stock. */
export function ageDays(madeOn: string | null, usedOn: string): number | null {
  const made = madeOn === null ? null : dayMs(madeOn)
  const used = dayMs(usedOn)
  return made === null || used === null ? null : Math.max(0, Math.round((used - made) / DAY_MS))
}
