// The acts of making a stock, one at a time, each with its cautions.
import { useState } from 'preact/hooks'
import { showPercent, type Units } from '../../../core/quantity/index.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import { stockCautions } from '../../../core/safety/stock-making.ts'
import type { Making } from '../../../core/shelf/events.ts'
import type { MakingAct } from '../../../core/shelf/make.ts'
import { CautionBox } from '../../parts/caution-box.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import type { OnShelf } from '../../shelf.ts'
import { Failed } from './thing-form.tsx'
import { amountWords } from './words.ts'

type Props = {
  name: string
  acts: MakingAct[]
  making: Making
  percentWV: number
  stocks: readonly OnShelf[]
  units: Units
  failed: string | null
  busy: boolean
  change: () => void
  finish: () => void
}

export function MakeActs(props: Props): preact.JSX.Element | null {
  const { name, acts, units, failed, busy, change, finish, percentWV, making } = props
  const [at, setAt] = useState(0)
  const act = acts[at]
  if (act === undefined) return null
  const last = at === acts.length - 1
  const made = `${name}: ${amountWords(making.volumeML, 'mL', units)} of ${showPercent(percentWV, units)} w/v`
  return (
    <Page title={act.act} actions={<Pad onPress={at === 0 ? change : () => setAt(at - 1)}>Back</Pad>}>
      <p class="soft" role="status">{`${made}. Step ${at + 1} of ${acts.length}.`}</p>
      {act.amount === null ? null : (
        <p class="shelf-amount">
          <strong>{amountWords(act.amount.value, act.amount.unit, units)}</strong>
          <span>{act.amount.of}</span>
        </p>
      )}
      <p class="shelf-act-say">{act.say}</p>
      <Short {...props} act={act} />
      {act.hazards.flatMap(stockCautions).map((caution) => (
        <CautionBox key={caution.id} title={caution.title} say={caution.say} source={caution.source} />
      ))}
      {act.hazards.length > 0 ? <p class="soft">{closingLine}</p> : null}
      <Failed say={failed} />
      <div class="shelf-foot">
        <Pad
          kind="main"
          look="solid"
          layoutKey={act.id}
          disabled={busy}
          onPress={() => {
            if (last) return finish()
            setAt(at + 1)
            scrollTo(0, 0)
          }}
        >
          {last ? 'It is made' : 'Done'}
        </Pad>
      </div>
    </Page>
  )
}

/** Less in the bottle than is to be poured: said before it is poured. */
function Short({ act, making, stocks, units }: Props & { act: MakingAct }): preact.JSX.Element | null {
  const from = making.from[Number(/^pour-(\d+)$/.exec(act.id)?.[1] ?? -1)]
  const left = stocks.find(({ item }) => item.itemId === from?.itemId)?.level?.left
  if (from === undefined || left === undefined || left >= from.volumeML) return null
  return <Strip tone="warn">{`By its level only ${amountWords(Math.max(0, left), 'mL', units)} are left in it.`}</Strip>
}
