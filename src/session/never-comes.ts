import type { LiveState } from '../core/pot/state.ts'
import type { Until } from '../core/protocol/model.ts'
import { stepAt } from '../core/protocol/tree.ts'
import type { SimulatedBath } from './simulated-bath.ts'

type TemperatureUntil = Extract<Until, { kind: 'temperature' }>

/** By then every bath has come to where it goes. */
const SETTLED_AFTER_MS = 60 * 24 * 3_600_000

/** Why nothing will ever change any more: all that goes on waits for a temperature that the bath does not come to, or for
 * a moment that would have to come of such a wait. */
export function neverComes(live: LiveState, bath: SimulatedBath, nowMs: number): string | null {
  let why: string | null = null
  for (const active of live.active) {
    const step = stepAt(live.programme, active.path)
    const open = step?.wait?.until.filter((_, i) => !active.met.includes(i)) ?? []
    const hopeless = open.find(
      (until): until is TemperatureUntil => until.kind === 'temperature' && !comesTo(bath, nowMs, until)
    )
    if (hopeless) why ??= `${active.path}: ${neverWords(bath, nowMs, hopeless)}`
    else if (!open.some(({ kind }) => kind === 'moment')) return null
  }
  return why
}

/** Where it is now, or where it goes to as it is heated or cooled now. */
function comesTo(bath: SimulatedBath, nowMs: number, { lowC, highC, going }: TemperatureUntil): boolean {
  return [nowMs, nowMs + SETTLED_AFTER_MS].some((atMs) => {
    const tempC = bath.tempC(atMs)
    return going === 'down' ? highC === null || tempC <= highC : lowC === null || tempC >= lowC
  })
}

function neverWords(bath: SimulatedBath, nowMs: number, { lowC, highC, going }: TemperatureUntil): string {
  const settledC = bath.tempC(nowMs + SETTLED_AFTER_MS)
  const wanted = going === 'down' ? highC : lowC
  const comes = settledC === bath.tempC(nowMs) ? 'it stays at' : 'it comes to'
  return `waits for ${wanted} °C, which the simulated bath never reaches at this heat: ${comes} ${settledC} °C`
}
