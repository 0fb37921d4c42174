// The bench: pots that soak, cool or dry. They need neither heat nor hands until their time comes.
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { Pad } from '../../parts/pad.tsx'
import { useSettled } from '../../parts/settled.ts'
import { livePots, nameOf, openSteps } from './live.ts'
import type { Stage } from './stage.ts'
import { Left } from './time-leaf.tsx'
import './bench.css'

type Props = { kitchen: Kitchen; stage: Stage; pots: string[]; shown: string | null }

export function Bench({ kitchen, stage, pots, shown }: Props): preact.JSX.Element | null {
  if (pots.length === 0) return null
  return (
    <section class="bench" aria-label="Bench">
      <h2 class="bench-name">Bench</h2>
      <div class="bench-pots">
        {pots.map((potId) => (
          <BenchPot key={potId} kitchen={kitchen} stage={stage} potId={potId} shown={potId === shown} />
        ))}
      </div>
    </section>
  )
}

type PotProps = { kitchen: Kitchen; stage: Stage; potId: string; shown: boolean }

function BenchPot({ kitchen, stage, potId, shown }: PotProps): preact.JSX.Element | null {
  const line = useSettled(() => {
    const pot = livePots(kitchen.pots.value).find((p) => p.potId === potId)
    const open = pot ? openSteps(pot.state)[0] : undefined
    if (!pot) return null
    return {
      name: nameOf(pot),
      colour: bathColour(pot.state.pot.colour),
      doing: open?.step.doing ?? 'Done',
      atMs: open?.active.dueAtMs ?? null
    }
  })
  if (!line) return null
  return (
    <Pad
      kind="lesser"
      look="plain"
      className="bench-pot"
      selected={shown}
      onPress={() => (stage.shown.value = shown ? null : potId)}
    >
      <span class="bench-line">
        <span class="bench-dye" style={{ background: line.colour }} />
        {line.name}
      </span>
      <span class="bench-doing">
        {line.doing}
        {line.atMs === null ? null : (
          <>
            , <Left kitchen={kitchen} atMs={line.atMs} />
          </>
        )}
      </span>
    </Pad>
  )
}
