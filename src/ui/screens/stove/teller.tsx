// The Stove for the ear of a screen reader: calls at once, the rest when there is a pause.
import type { Kitchen } from '../../kitchen.ts'
import { useSettled } from '../../parts/settled.ts'
import { amountSay } from './amount.ts'
import { calledBy } from './asks.ts'
import type { Call } from './calls.ts'
import { handsIn, handsWanted, livePots, nameOf } from './live.ts'

type Props = { kitchen: Kitchen; full: Call | null; again: number }

export function Teller({ kitchen, full, again }: Props): preact.JSX.Element {
  return (
    <>
      <p class="unseen" aria-live="assertive" aria-atomic="true">
        {/* Words put in anew are read out anew. */}
        <span key={again}>{full ? callSay(kitchen, full) : ''}</span>
      </p>
      <Next kitchen={kitchen} />
    </>
  )
}

/** Pot, act, amount. */
function callSay(kitchen: Kitchen, { pot, alert }: Call): string {
  const { act, step } = calledBy(pot.state, alert)
  const amount = step?.dose ? `${amountSay(step.dose.amount, kitchen.settings.value)}.` : ''
  return `${nameOf(pot)}. ${act}. ${amount}`.trim()
}

function Next({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const say = useSettled(() => {
    const pots = livePots(kitchen.pots.value)
    const nowMs = kitchen.now.value
    const worked = pots.find((pot) => handsIn(pot.state, nowMs))
    const next = handsWanted(pots, nowMs).find((w) => w.pot !== worked)
    return [worked ? `${nameOf(worked)}: hands in.` : '', next ? `Next ${nameOf(next.pot)}: ${next.what}.` : ''].join(
      ' '
    )
  })
  return (
    <p class="unseen" aria-live="polite" aria-atomic="true">
      {say}
    </p>
  )
}
