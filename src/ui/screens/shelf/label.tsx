// A label to print and stick on: 62 x 29 mm, with a code that carries the id.
import { showPercent, type Units } from '../../../core/quantity/index.ts'
import type { Shelved } from '../../../core/shelf/state.ts'
import type { Thing } from '../../../core/shelf/thing.ts'
import type { Kitchen } from '../../kitchen.ts'
import { potFor } from '../../parts/new-stock.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Qr } from '../../parts/qr.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import { itemRoute } from './routes.ts'
import { alkalinityWords, strengthWords, treatedWords } from './words.ts'

type Props = { kitchen: Kitchen; item: Shelved; forPot: string | null }

export function LabelPage({ kitchen, item, forPot }: Props): preact.JSX.Element {
  return (
    <Page title="Label" actions={<Pad onPress={() => kitchen.go(itemRoute(item.itemId))}>Back</Pad>}>
      <Label item={item} units={unitsOf(kitchen.settings.value)} />
      <p class="soft">62 × 29 mm, black on white. The code holds the whole id of this thing.</p>
      <Pad kind="lesser" look={forPot === null ? 'solid' : 'plain'} onPress={() => print()}>
        Print it
      </Pad>
      {forPot === null ? null : (
        <Pad kind="lesser" look="solid" onPress={() => kitchen.go(`#/start/${encodeURIComponent(forPot)}`)}>
          {`Back to starting ${potFor(forPot)}`}
        </Pad>
      )}
    </Page>
  )
}

/** The id as it is read by eye: enough to tell two bottles apart. */
function shortId(itemId: string): string {
  return itemId.slice(0, 8)
}

export function Label({ item, units }: { item: Shelved; units: Units }): preact.JSX.Element {
  const { thing, itemId } = item
  return (
    <section class="shelf-label" aria-label={`Label of ${thing.name}`}>
      <Qr text={itemId} label={`Code of ${thing.name}, ${shortId(itemId)}`} />
      <div class="shelf-label-words">
        <strong>{thing.name}</strong>
        {linesOf(thing, units).map((line) => (
          <span key={line}>{line}</span>
        ))}
        <span>{`Id ${shortId(itemId)}`}</span>
        <span class="shelf-label-caution">{cautionOf(thing)}</span>
      </div>
    </section>
  )
}

function linesOf(thing: Thing, units: Units): string[] {
  const lot = 'lot' in thing && thing.lot !== '' ? `Lot ${thing.lot}` : ''
  switch (thing.kind) {
    case 'stock': {
      const made = thing.madeOn === null ? 'Made: not known' : `Made ${thing.madeOn}`
      return [`${showPercent(thing.percentWV, units)} w/v ${thing.dye}`, [made, lot].filter(Boolean).join(', ')]
    }
    case 'acid':
      return [[thing.acid, strengthWords(thing, units)].filter(Boolean).join(', '), lot].filter(Boolean)
    case 'yarn':
      return [thing.fibre, treatedWords[thing.treated], lot].filter(Boolean)
    case 'water':
      return [alkalinityWords(thing.alkalinityMgPerL, units)]
    case 'pot':
      return [thing.material].filter(Boolean)
    case 'burner':
      return [thing.heat].filter(Boolean)
  }
}

function cautionOf({ kind }: Thing): string {
  if (kind === 'stock') return 'Dye: not for food. Keep from children.'
  if (kind === 'acid') return 'Acid: mind eyes and skin. Not for food.'
  return kind === 'pot' ? 'Dye tools only: never for food.' : ''
}
