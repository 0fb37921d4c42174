// A bottle that does not hold what the pot wants, beside what the pots on the stove still take: each way out is one press.
import { showDose, showMass, showPercent, type Units } from '../../../core/quantity/index.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { nameOf } from '../../parts/bottle-words.ts'
import { bottleFor, makeFor } from '../../parts/new-stock.ts'
import { Pad } from '../../parts/pad.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import { toField } from './field-id.ts'
import { fitting, type Short, withBottles } from './from-shelf.ts'
import { lighter, paler } from './scaled.ts'

type Props = {
  kitchen: Kitchen
  stored: StoredProtocol
  potName: string
  shorts: readonly Short[]
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  /** What would be short with that changed. */
  shortsOf: (change: Partial<StartDraft>) => readonly Short[]
  units: Units
}

export function Shorts(props: Props): preact.JSX.Element | null {
  if (props.shorts.length === 0) return null
  return (
    <ul class="start-flags" aria-label="Short on the shelf">
      {props.shorts.map((short) => (
        <OneShort key={short.material} short={short} {...props} />
      ))}
    </ul>
  )
}

function OneShort({
  kitchen,
  stored,
  potName,
  short,
  draft,
  change,
  shortsOf,
  units
}: Props & { short: Short }): preact.JSX.Element {
  const ids = draft.bottles[short.material]?.shelf ?? []
  const other = short.others[0]
  const { material, covered } = short
  const isStock = stored.protocol.materials.some(({ id, kind }) => id === material && kind === 'stock')
  const light = fitting(material, covered, (share) => lighter(draft, share, units), shortsOf)
  const pale = fitting(material, covered, (share) => paler(stored.protocol, draft, material, share), shortsOf)
  return (
    <li class="start-flag" data-code="short">
      <p>
        <strong>{shortWords(short, potName, units)}</strong> {isStock ? 'New stock' : 'Refill it'}, scale, or a
        different one.
      </p>
      <div class="start-flag-ways">
        {other ? (
          <Pad onPress={() => change(withBottles(draft, short.material, [...ids, other.item.itemId]))}>
            {`The rest from ${nameOf(other)}`}
          </Pad>
        ) : null}
        {light ? <Pad onPress={() => change(light.draft)}>{`Dye ${showMass(light.goodsG, units)}`}</Pad> : null}
        {pale ? <Pad onPress={() => change(pale.draft)}>{`Dye to ${showPercent(pale.percent, units)}`}</Pad> : null}
        {isStock ? (
          <Pad onPress={() => kitchen.go(makeFor({ protocolId: stored.id, material, shortML: short.short }))}>
            New stock
          </Pad>
        ) : (
          <Pad onPress={() => kitchen.go(bottleFor(ids.at(-1) ?? '', stored.id))}>Refill the bottle</Pad>
        )}
        <Pad onPress={() => toField(`start-bottle-${short.material}-shelf-0`)}>A different one</Pad>
      </div>
    </li>
  )
}

export function shortWords({ label, bottle, unit, wanted, short }: Short, potName: string, units: Units): string {
  const shown = (value: number): string => showDose({ value, unit }, units)
  const there = shown(Math.max(0, wanted - short))
  const of = bottle === label ? label : `${label} (${bottle})`
  return `${potName} is ${shown(short)} of ${of} short: ${shown(wanted)} wanted, ${there} free.`
}
