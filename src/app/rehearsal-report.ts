// What came of a rehearsal, from what its pots have told.
import { alarmBudget } from '../core/pot/alarm-budget.ts'
import { stepAt } from '../core/protocol/tree.ts'
import { actsOf, type HandsAct, handsMeetings } from '../session/rehearse-together.ts'
import type { RehearsalReport } from '../ui/rehearsing.ts'
import type { RehearsalStove } from './rehearsal-stove.ts'

export async function rehearsalReport({ pots, startMs, told }: RehearsalStove): Promise<RehearsalReport> {
  const all = await Promise.all(
    pots.map(async ({ identity, on }) => {
      const { potId } = identity
      return { identity, on, acts: { potId, programme: on.programme, told: await told(potId) } }
    })
  )
  const nameOf = new Map(all.map(({ identity, on }) => [identity.potId, { name: identity.colourway, on }]))
  const actWords = ({ potId, path }: HandsAct): { pot: string; act: string } => {
    const pot = nameOf.get(potId)
    const step = pot ? stepAt(pot.on.programme, path) : null
    return { pot: pot?.name ?? '', act: step?.knot || step?.call || path }
  }
  const say = (act: HandsAct): string => {
    const { pot, act: what } = actWords(act)
    return `${pot}: ${what}`
  }
  return {
    pots: all.map(({ identity, on, acts }) => {
      const end = acts.told.findLast(({ event }) => event.type === 'StepsDone')
      const tookMs = end === undefined ? null : end.atMs - startMs - on.startsMs
      return { name: identity.colourway, title: on.protocol.title, tookMs, ...alarmBudget(acts.told) }
    }),
    acts: all
      .flatMap(({ acts }) => actsOf(acts))
      .map((act) => ({
        ...actWords(act),
        atMs: act.calledAtMs - startMs,
        waitedMs: act.doneAtMs - act.calledAtMs
      })),
    meetings: handsMeetings(all.map(({ acts }) => acts)).map(({ atMs, first, second, waitedMs }) => ({
      atMs: atMs - startMs,
      first: say(first),
      second: say(second),
      waitedMs
    }))
  }
}
