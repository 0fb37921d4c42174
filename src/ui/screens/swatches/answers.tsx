// What no picture tells: is the yarn dry, and of how many fibres is it?
import type { Signal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import type { Draft } from './draft.ts'
import { DryRow } from './dry-row.tsx'

type Props = { kitchen: Pick<Kitchen, 'entries'>; draft: Signal<Draft> }

export function Answers({ kitchen, draft }: Props): preact.JSX.Element {
  const { dry, fibres } = draft.value
  const fibre = useFibre(kitchen, draft.value.batchId)
  return (
    <section class="swatches-part" aria-labelledby="swatches-asked">
      <h2 id="swatches-asked">Two questions</h2>
      <DryRow legend="Is all the yarn dry?" dry={dry} change={(is) => (draft.value = { ...draft.value, dry: is })} />
      <ChoiceRow
        legend="How many fibres is it of?"
        choices={[
          { value: 1, label: 'One fibre' },
          { value: 2, label: 'Two or more' }
        ]}
        value={fibres}
        onChoose={(value) => (draft.value = { ...draft.value, fibres: value })}
      />
      {fibre ? <p class="soft">{`The batch’s yarn: ${fibre}.`}</p> : null}
    </section>
  )
}

/** What the batch's record says its yarn is of; null where it says nothing, or there is no batch. */
export function useFibre(kitchen: Props['kitchen'], batchId: string | null): string | null {
  const [fibre, setFibre] = useState<string | null>(null)
  useEffect(() => {
    let here = true
    setFibre(null)
    if (batchId === null) return
    // Without it the dyer is asked all the same.
    kitchen.entries(batchId).then(
      ({ entries }) => {
        const start = entries.find(({ event }) => event.type === 'PotStarted')?.event
        if (here && start?.type === 'PotStarted') setFibre(start.pot.fibre)
      },
      () => {}
    )
    return () => {
      here = false
    }
  }, [kitchen, batchId])
  return fibre
}
