// A bottle that does not hold what the pot wants, beside what the pots on the stove still take: each way out is one press.
import type { Protocol } from '../../../core/protocol/model.ts'
import { showDose, showMass, showPercent, showVolume, type Units } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { toField } from './field-id.ts'
import { fitting, type Short, withBottles } from './from-shelf.ts'
import { lighter, paler } from './scaled.ts'

type Props = {
  kitchen: Kitchen
  protocol: Protocol
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
  protocol,
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
  const light = fitting(material, covered, (share) => lighter(draft, share, units), shortsOf)
  const pale = fitting(material, covered, (share) => paler(protocol, draft, material, share), shortsOf)
  return (
    <li class="start-flag" data-code="short">
      <p>
        <strong>{shortWords(short, potName, units)}</strong> New stock, scale, or a different one.
      </p>
      <div class="start-flag-ways">
        {other ? (
          <Pad onPress={() => change(withBottles(draft, short.material, [...ids, other.item.itemId]))}>
            {`The rest from ${nameOf(other)}`}
          </Pad>
        ) : null}
        {light ? <Pad onPress={() => change(light.draft)}>{`Dye ${showMass(light.goodsG, units)}`}</Pad> : null}
        {pale ? <Pad onPress={() => change(pale.draft)}>{`Dye to ${showPercent(pale.percent, units)}`}</Pad> : null}
        <Pad onPress={() => kitchen.go('#/shelf')}>New stock</Pad>
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

/** "stock Y, lot Y-3". */
export function nameOf({ item: { thing } }: OnShelf): string {
  const lot = 'lot' in thing ? thing.lot : ''
  return lot === '' ? thing.name : `${thing.name}, lot ${lot}`
}

/** What the label says and what is free of it. */
export function labelWords({ item: { thing }, level }: OnShelf, units: Units): string {
  const facts: string[] = []
  if (thing.kind === 'stock') facts.push(`${showPercent(thing.percentWV, units)} w/v`, madeWords(thing.madeOn))
  if (thing.kind === 'acid' && thing.percent !== null) facts.push(`${showPercent(thing.percent, units)} ${thing.basis}`)
  if (level !== null) {
    const shown = level.unit === 'mL' ? showVolume : showMass
    facts.push(level.free < 0 ? 'none free' : `${shown(level.free, units)} free`)
  }
  return facts.filter(Boolean).join(', ')
}

function madeWords(madeOn: string | null): string {
  return madeOn === null ? '' : `made ${madeOn}`
}
