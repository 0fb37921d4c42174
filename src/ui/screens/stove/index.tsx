// The Stove. Without a pot it is a few words and two pads; all that draws pots is fetched right after that, or at the start
// where pots are on.

import { useEffect } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { EmptyState } from '../../parts/empty-state.tsx'
import { later } from '../../parts/later.tsx'
import { Pad } from '../../parts/pad.tsx'
import { useSettled } from '../../parts/settled.ts'
import { Header } from './header.tsx'
import { MissedPanel } from './missed-panel.tsx'
import { useWet } from './wet.tsx'
import './style.css'

/** A newcomer's first five minutes: one built-in, answered by the newcomer, on a fast clock. */
const FIRST_REHEARSAL = '#/rehearse/own/60/level-immersion'

const WithPots = later(() => import('./with-pots.tsx').then((m) => ({ default: m.WithPots })))

/** Resolves when pots can be drawn at once; rejects where the file does not come. */
export const potsCanBeDrawn = (): Promise<void> => WithPots.fetched()

export function Stove({ kitchen, onMenu }: { kitchen: Kitchen; onMenu: () => void }): preact.JSX.Element {
  const pots = useSettled(() => kitchen.pots.value.length > 0)
  useWet(kitchen)
  useEffect(() => WithPots.fetchNow(), [])
  return (
    <>
      <h1 class="unseen">Stove</h1>
      {pots ? <WithPots kitchen={kitchen} onMenu={onMenu} /> : <NoPots kitchen={kitchen} onMenu={onMenu} />}
    </>
  )
}

function NoPots({ kitchen, onMenu }: { kitchen: Kitchen; onMenu: () => void }): preact.JSX.Element {
  return (
    <div class="stove" data-pots={0}>
      <div class="stove-strips">
        <MissedPanel kitchen={kitchen} />
      </div>
      <Header kitchen={kitchen} onMenu={onMenu} />
      <Empty kitchen={kitchen} />
    </div>
  )
}

function Empty({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return (
    <EmptyState
      title="No pot is on"
      actions={
        <>
          <Pad kind="main" look="solid" onPress={() => kitchen.go('#/start')}>
            Start a pot
          </Pad>
          <Pad kind="main" onPress={() => kitchen.go('#/protocols')}>
            Protocols
          </Pad>
          <Pad kind="lesser" onPress={() => kitchen.go(FIRST_REHEARSAL)}>
            Rehearse one first, with no yarn and no heat
          </Pad>
        </>
      }
    >
      <p>
        Here each pot shows its next acts and how long until they are due, calls you for them, and writes down what was
        done.
      </p>
    </EmptyState>
  )
}
