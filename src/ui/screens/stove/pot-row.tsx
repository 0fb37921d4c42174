// The row at the waterline: every pot that hangs on the rod, always in the same place.
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { FitText } from '../../parts/fit-text.tsx'
import { Pad } from '../../parts/pad.tsx'
import { useSettled } from '../../parts/settled.ts'
import { bathView } from './bath-view.ts'
import { livePots } from './live.ts'
import type { Stage } from './stage.ts'
import { strandX } from './strand.tsx'
import { Left } from './time-leaf.tsx'
import './pot-row.css'

type Props = { kitchen: Kitchen; stage: Stage; pots: string[]; shown: string | null; columnPx: number }

export function PotRow({ kitchen, stage, pots, shown, columnPx }: Props): preact.JSX.Element {
  return (
    <nav
      class="pot-row"
      aria-label="Pots"
      data-narrow={columnPx < 150 ? '' : undefined}
      style={{ '--strand-x': `${strandX(columnPx)}px` }}
    >
      {pots.map((potId) => (
        <PotTab key={potId} kitchen={kitchen} stage={stage} potId={potId} shown={potId === shown} />
      ))}
    </nav>
  )
}

type TabProps = { kitchen: Kitchen; stage: Stage; potId: string; shown: boolean }

function PotTab({ kitchen, stage, potId, shown }: TabProps): preact.JSX.Element | null {
  const tab = useSettled(() => {
    const pot = livePots(kitchen.pots.value).find((p) => p.potId === potId)
    if (!pot) return null
    const { name, time, status } = bathView(pot, kitchen.now.value, kitchen.settings.value)
    return { name, colour: bathColour(pot.state.pot.colour), status, atMs: time.kind === 'to' ? time.atMs : null }
  })
  if (!tab) return null
  return (
    <div class="pot-tab" style={{ '--bath': tab.colour }} data-shown={shown ? '' : undefined}>
      <Pad kind="lesser" look="bath" selected={shown} onPress={() => (stage.shown.value = potId)}>
        <FitText text={tab.name} mostPx={22} leastPx={13} tag="span" className="pot-tab-name" />
        <span class="pot-tab-time">
          {tab.status === 'stopped' ? 'stopped' : null}
          {tab.status === 'trouble' ? 'trouble' : null}
          {tab.status === 'running' && tab.atMs !== null ? <Left kitchen={kitchen} atMs={tab.atMs} /> : null}
        </span>
      </Pad>
    </div>
  )
}
