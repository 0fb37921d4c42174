// Everything on the shelf, by kind.
import type { Units } from '../../../core/quantity/index.ts'
import { thingKinds } from '../../../core/shelf/thing.ts'
import type { Kitchen } from '../../kitchen.ts'
import { EmptyState } from '../../parts/empty-state.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import type { KitchenShelf, OnShelf } from '../../shelf.ts'
import { LevelMeasure } from './level.tsx'
import { ADD, itemRoute, MAKE, SUMS } from './routes.ts'
import { factsOf, kindWords } from './words.ts'

type Props = { kitchen: Kitchen; shelf: KitchenShelf }

export function ShelfList({ kitchen, shelf }: Props): preact.JSX.Element {
  const things = shelf.things.value
  const here = things.filter(({ item }) => item.status === 'here')
  const away = things.filter(({ item }) => item.status === 'away')
  const sums = <Pad onPress={() => kitchen.go(SUMS)}>Bench sums</Pad>
  const acts = (
    <>
      <Pad look="solid" onPress={() => kitchen.go(MAKE)}>
        Make a stock
      </Pad>
      <Pad onPress={() => kitchen.go(ADD)}>Add</Pad>
      {sums}
    </>
  )
  return (
    <Page title="Shelf" actions={things.length > 0 ? acts : sums}>
      {shelf.unread.value === null ? null : (
        <Strip tone="bad" urgent actions={<Pad onPress={() => void shelf.again()}>Try again</Pad>}>
          {shelf.unread.value}
        </Strip>
      )}
      {shelf.broken.value.map(({ itemId, say }) => (
        <Strip key={itemId} tone="bad">
          {`A thing on the shelf (${itemId.slice(0, 8)}) can’t be read. ${say}`}
        </Strip>
      ))}
      {things.length === 0 && shelf.unread.value === null ? <Nothing kitchen={kitchen} /> : null}
      {thingKinds.map((kind) => (
        <Section
          key={kind}
          title={kindWords[kind].many}
          things={here.filter(({ item }) => item.thing.kind === kind)}
          kitchen={kitchen}
        />
      ))}
      {away.length > 0 ? (
        <details class="shelf-away">
          <summary>{`Put away, ${away.length}`}</summary>
          <Lines things={away} kitchen={kitchen} />
        </details>
      ) : null}
    </Page>
  )
}

function Nothing({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return (
    <EmptyState
      title="Nothing on the shelf yet"
      actions={
        <>
          <Pad kind="lesser" look="solid" onPress={() => kitchen.go(MAKE)}>
            Make a stock
          </Pad>
          <Pad kind="lesser" onPress={() => kitchen.go(ADD)}>
            Add what is there
          </Pad>
        </>
      }
    >
      <p>Stocks, acids, yarns, waters, pots and burners stand here, each with the label it has.</p>
      <p>
        A pot that is started from these bottles draws its doses from them: what is left is worked out, and the record
        says which lot it was and how old.
      </p>
    </EmptyState>
  )
}

type SectionProps = { title: string; things: OnShelf[]; kitchen: Kitchen }

function Section({ title, things, kitchen }: SectionProps): preact.JSX.Element | null {
  if (things.length === 0) return null
  return (
    <section class="shelf-kind">
      <h2>{title}</h2>
      <Lines things={things} kitchen={kitchen} />
    </section>
  )
}

function Lines({ things, kitchen }: { things: OnShelf[]; kitchen: Kitchen }): preact.JSX.Element {
  const units = unitsOf(kitchen.settings.value)
  const nowMs = kitchen.now.peek()
  return (
    <ul class="shelf-lines">
      {things.map((one) => (
        <Line key={one.item.itemId} one={one} units={units} nowMs={nowMs} />
      ))}
    </ul>
  )
}

function Line({ one, units, nowMs }: { one: OnShelf; units: Units; nowMs: number }): preact.JSX.Element {
  const { item, level, readOnly } = one
  const facts = factsOf(item.thing, nowMs, units)
  if (item.status === 'away') facts.push(item.how)
  return (
    <li>
      <a class="shelf-line" href={itemRoute(item.itemId)}>
        <span class="shelf-name">{item.thing.name}</span>
        <span class="soft">{facts.join(' · ')}</span>
        {item.status === 'here' ? <LevelMeasure thing={item.thing} level={level} units={units} /> : null}
        {readOnly === null ? null : <span class="shelf-wrong">Can be read, not changed.</span>}
      </a>
    </li>
  )
}
