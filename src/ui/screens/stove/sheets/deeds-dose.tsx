// A dose that went in otherwise than planned, said from the sheet: on a small screen its call may have no room for it.
import { enteredAmount } from '../amount.ts'
import { NumberPads } from '../ask/number-pads.tsx'
import { type LivePot, openSteps } from '../live.ts'
import { capital } from '../words.ts'
import type { Deed, DeedProps } from './deed.ts'

type Due = { path: string; planned: Parameters<typeof enteredAmount>[0] }

/** The dose that is open; null: none is. */
function due({ state }: LivePot): Due | null {
  const step = openSteps(state).find(({ step }) => step.dose)?.step
  return step?.dose ? { path: step.path, planned: step.dose.amount } : null
}

function OtherAmount({ pot, send }: DeedProps): preact.JSX.Element {
  const dose = due(pot)
  if (dose === null) return <p>No dose is due now.</p>
  const { path, planned } = dose
  return (
    <NumberPads
      first={planned.value}
      unit={planned.unit === 'count' ? '' : planned.unit}
      look="plain"
      layoutKey={path}
      say={`${capital(planned.of)}:`}
      onNumber={(value) => send({ type: 'MarkDone', path, added: enteredAmount(planned, value) })}
    />
  )
}

export const doseDeeds: Deed[] = [
  { id: 'amount', say: 'Other amount', group: 'Bath', fits: (pot) => due(pot) !== null, Form: OtherAmount }
]
