// What the protocol comes to as it stands: how long, what to set out, what to be careful with.
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Programme, Protocol } from '../../../core/protocol/model.ts'
import { planOf } from '../../../core/record/plan.ts'
import { cautionsBeforeStart } from '../../../core/safety/before-start.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import type { Kitchen } from '../../kitchen.ts'
import { atDefaults, READ_FOR_G } from '../../parts/at-defaults.ts'
import { CautionBox } from '../../parts/caution-box.tsx'
import { LyingStrand } from '../../parts/lying-strand.tsx'
import { ProgrammeFacts, SetOut } from '../../parts/programme-facts.tsx'
import { plannedItems, type StrandItem } from '../../parts/strand-items.ts'
import { unitsOf } from '../../parts/units-of.ts'

/** Working a protocol out must not hold up the typing: it waits for a pause. */
const PAUSE_MS = 200

/** Worked out with what the protocol presumes; null: it can't be, or not yet. */
export function useProgramme(protocol: Protocol | null): Programme | null {
  const settled = useSettledProtocol(protocol)
  return useMemo(() => (settled ? atDefaults(settled) : null), [settled])
}

type Props = { kitchen: Kitchen; protocol: Protocol | null; programme: Programme | null }

export function Live({ kitchen, protocol, programme }: Props): preact.JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself on a wide screen, and the keyboard must reach it.
    <section class="workshop-live" aria-label="What it comes to" tabIndex={0}>
      <h2>What it comes to</h2>
      {programme ? <Worked kitchen={kitchen} programme={programme} /> : <p>{whyNot(protocol)}</p>}
    </section>
  )
}

function whyNot(protocol: Protocol | null): string {
  return protocol === null
    ? 'Times, what to set out and cautions are shown as soon as the problems are mended.'
    : 'It asks for figures that have no default, so its times can’t be worked out before a pot is started.'
}

function useSettledProtocol(protocol: Protocol | null): Protocol | null {
  const [settled, setSettled] = useState(protocol)
  useEffect(() => {
    // What can't be read has nothing to work out.
    if (protocol === null) return setSettled(null)
    const timer = setTimeout(() => setSettled(protocol), PAUSE_MS)
    return () => clearTimeout(timer)
  }, [protocol])
  return settled
}

/** Hundreds of knots take longer to draw than a letter to type: they wait until the hand rests. */
const REST_MS = 600

function Strand({ programme }: { programme: Programme }): preact.JSX.Element | null {
  const [items, setItems] = useState<StrandItem[]>([])
  useEffect(() => {
    const timer = setTimeout(() => setItems(plannedItems(programme, planOf(programme, 0))), REST_MS)
    return () => clearTimeout(timer)
  }, [programme])
  if (items.length === 0) return null
  return (
    <div class="workshop-strand">
      <LyingStrand
        items={items}
        planOnly
        title="The steps in time, as far as they are known; listed in words as rows."
      />
    </div>
  )
}

function Worked({ kitchen, programme }: { kitchen: Kitchen; programme: Programme }): preact.JSX.Element {
  const cautions = useMemo(() => cautionsBeforeStart(programme), [programme])
  return (
    <>
      <ProgrammeFacts programme={programme} />
      <Strand programme={programme} />
      <h3>{`To set out, for ${READ_FOR_G} g`}</h3>
      {programme.setOut.length === 0 ? (
        <p>Nothing to measure.</p>
      ) : (
        <SetOut programme={programme} units={unitsOf(kitchen.settings.value)} />
      )}
      <h3>Cautions</h3>
      {cautions.map((caution) => (
        <CautionBox key={caution.id} title={caution.title} say={caution.say} source={caution.source} />
      ))}
      <p class="soft">{closingLine}</p>
    </>
  )
}
