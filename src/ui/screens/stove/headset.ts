// Headset buttons at the Stove: "next" answers the call that fills the screen, "previous" says it again. What they would
// answer stands on the lock screen. They can't choose, and they answer nothing that does not call.
import { useEffect, useRef } from 'preact/hooks'
import type { HeadsetDeed, Kitchen } from '../../kitchen.ts'
import { DEAD_MS, takeTap } from '../../parts/guard.ts'
import { amountSay } from './amount.ts'
import { calledBy } from './asks.ts'
import type { Call } from './calls.ts'
import { choicesNow } from './choice.ts'
import { nameOf } from './live.ts'
import { pressCall } from './press.ts'
import type { Stage } from './stage.ts'

type Props = { kitchen: Kitchen; stage: Stage; full: Call | null; layoutKey: string; again: () => void }

export function useHeadset(props: Props): void {
  const { kitchen, full, layoutKey } = props
  const latest = useRef(props)
  latest.current = props
  useEffect(() => {
    const bornMs = performance.now()
    return kitchen.headset?.hear((deed) => {
      const nowMs = performance.now()
      if (nowMs - bornMs >= DEAD_MS && takeTap(nowMs)) press(latest.current, deed)
    })
  }, [kitchen, layoutKey])
  const title = full === null ? 'No call' : titleOf(kitchen, full)
  const artist = full === null || isQuestion(full) ? 'Strandline' : 'Next: done. Previous: say it again'
  useEffect(() => kitchen.headset?.tell({ title, artist }), [kitchen, title, artist])
}

function press({ stage, full, again }: Props, deed: HeadsetDeed): void {
  const say = whyNot(full)
  if (deed === 'again') again()
  else if (full !== null && say === null) pressCall(stage, full, 'headset')
  else if (say !== null) stage.said.value = { potId: full?.pot.potId ?? '', say }
}

function whyNot(full: Call | null): string | null {
  if (full === null) return 'The headset answered, but nothing calls. Nothing was written down.'
  if (full.pot.readOnly !== null) return 'This record is read only. Nothing was written down.'
  if (isQuestion(full) || choicesNow() !== null)
    return 'A headset can’t choose among answers. Nothing was written down.'
  return null
}

function isQuestion({ pot, alert }: Call): boolean {
  return calledBy(pot.state, alert).ask?.kind === 'question'
}

/** "Moss: Acid 2 in, 30 mL". */
function titleOf(kitchen: Kitchen, { pot, alert }: Call): string {
  const { act, step } = calledBy(pot.state, alert)
  const amount = step?.dose ? amountSay(step.dose.amount, kitchen.settings.value) : null
  return `${nameOf(pot)}: ${[act, amount].filter(Boolean).join(', ')}`
}
