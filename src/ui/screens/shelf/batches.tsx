// The batches that drew from a thing, each led to its record.
import { useEffect, useState } from 'preact/hooks'
import type { Units } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { dayName } from '../../parts/day-name.ts'
import type { BatchDrawn, KitchenShelf } from '../../shelf.ts'
import { amountWords } from './words.ts'

type Props = { kitchen: Kitchen; shelf: KitchenShelf; itemId: string; units: Units }

export function Batches({ kitchen, shelf, itemId, units }: Props): preact.JSX.Element {
  const [batches, setBatches] = useState<BatchDrawn[] | null | 'unread'>(null)
  // What a pot draws meanwhile shows here too.
  const things = shelf.things.value
  useEffect(() => {
    let here = true
    shelf.batches(itemId).then(
      (found) => here && setBatches(found),
      () => here && setBatches('unread')
    )
    return () => {
      here = false
    }
  }, [shelf, itemId, things])
  return (
    <section class="shelf-part">
      <h2>Batches that drew from it</h2>
      {batches === 'unread' ? <p role="alert">They can’t be read just now.</p> : null}
      {batches !== null && batches.length === 0 ? <p class="soft">None yet.</p> : null}
      {Array.isArray(batches) && batches.length > 0 ? (
        <ul class="shelf-lines">
          {batches.map((batch) => (
            <li key={batch.potId}>
              <a class="shelf-line" href={`#/dye-book/${encodeURIComponent(batch.potId)}`}>
                <span class="shelf-name">{batch.colourway}</span>
                <span class="soft">
                  {[dayName(batch.startedAtMs, kitchen.now.peek()), ...drawnWords(batch, units)].join(' · ')}
                </span>
              </a>
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  )
}

function drawnWords({ draws }: BatchDrawn, units: Units): string[] {
  return (['mL', 'g'] as const).flatMap((unit) => {
    const all = draws.filter((draw) => draw.unit === unit)
    return all.length === 0
      ? []
      : [
          amountWords(
            all.reduce((sum, { amount }) => sum + amount, 0),
            unit,
            units
          )
        ]
  })
}
