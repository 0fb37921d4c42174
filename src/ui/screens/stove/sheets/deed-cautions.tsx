// The cautions of what may be done at a free pot now: in full at the first use of the day, then as a line.
import { useEffect, useState } from 'preact/hooks'
import type { Amount, Step, StepWord } from '../../../../core/protocol/model.ts'
import type { Caution } from '../../../../core/safety/caution.ts'
import { cautionsFor } from '../../../../core/safety/cautions-for.ts'
import { CautionBox } from '../../../parts/caution-box.tsx'
import { STALE_MS } from '../bath-view.ts'
import { markShown, shownBefore } from '../cautions.ts'
import { type LivePot, openSteps } from '../live.ts'
import type { Stage } from '../stage.ts'

const hands = { leastMs: 1, likelyMs: 60_000, mostMs: 60_000 }
/** What hands do at any pot. */
const usual: StepWord[] = ['hold', 'turn', 'lift']

type Props = { stage: Stage; pot: LivePot; adds?: Amount }

export function DeedCautions({ stage, pot, adds }: Props): preact.JSX.Element | null {
  const [cautions] = useState(() => deedCautions(pot, adds ?? null))
  const [fullId] = useState(() => cautions.find((one) => !shownBefore(one.id))?.id ?? null)
  const { potId } = pot
  useEffect(() => {
    if (fullId === null) return
    markShown(fullId)
    stage.note(potId, { type: 'ShowCaution', caution: fullId, path: null })
  }, [fullId, stage, potId])
  const full = cautions.find((one) => one.id === fullId)
  const rest = cautions.filter((one) => one !== full)
  if (cautions.length === 0) return null
  return (
    <div class="free-cautions">
      {full ? <CautionBox title={full.title} say={full.say} /> : null}
      {rest.length > 0 ? <p>{rest.map((one) => one.short).join(' ')}</p> : null}
    </div>
  )
}

/** A deed is looked at as if it were a step of the route, so that the same rules find the same cautions. */
export function deedCautions({ state }: LivePot, adds: Amount | null): Caution[] {
  const open = openSteps(state).find(({ step }) => step.open)?.step
  if (!open) return []
  const lastMs = Math.max(state.deedAtMs ?? 0, state.lastAtMs)
  const fresh = state.bathTempAtMs !== null && lastMs - state.bathTempAtMs <= STALE_MS
  const context = {
    bathTempC: fresh ? state.bathTempC : null,
    heatOn: state.heatOn,
    strengthPercent: null,
    kind: null
  }
  const steps: Step[] = adds
    ? [{ ...open, word: 'add', hands, dose: { amount: adds, cup: null, setOutId: '' } }]
    : usual.map((word) => ({ ...open, word, hands, heat: word === 'hold' && state.heatOn ? 'on' : null }))
  const found = steps.flatMap((step) => cautionsFor(step, context))
  return [...new Map(found.map((one) => [one.id, one])).values()]
}
