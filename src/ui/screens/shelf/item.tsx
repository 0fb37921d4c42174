// One thing on the shelf: what its label says, what is left, what can be done with it, and all that happened to it.
import { useState } from 'preact/hooks'
import { showPercent, showVolume, type Units } from '../../../core/quantity/index.ts'
import { acidCautions } from '../../../core/safety/acid-cautions.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import { benchAcidOf } from '../../../core/shelf/acid-on-shelf.ts'
import type { Making } from '../../../core/shelf/events.ts'
import { type Acid, type Thing, unitOf } from '../../../core/shelf/thing.ts'
import type { Kitchen } from '../../kitchen.ts'
import { CautionBox } from '../../parts/caution-box.tsx'
import { dayName } from '../../parts/day-name.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import type { KitchenShelf, OnShelf } from '../../shelf.ts'
import { Batches } from './batches.tsx'
import { History } from './history.tsx'
import { LevelMeasure } from './level.tsx'
import { itemRoute } from './routes.ts'
import { ActSheet, type SheetAct } from './sheets.tsx'
import { WayBack } from './way-back.tsx'
import { ageWords, alkalinityWords, amountWords, kindWords, strengthWords, treatedWords } from './words.ts'

type Props = { kitchen: Kitchen; shelf: KitchenShelf; one: OnShelf; forPot: string | null }

export function ItemPage({ kitchen, shelf, one, forPot }: Props): preact.JSX.Element {
  const { item, level, readOnly } = one
  const [sheet, setSheet] = useState<SheetAct | null>(null)
  const units = unitsOf(kitchen.settings.value)
  const { thing, itemId } = item
  return (
    <Page title={thing.name} actions={<WayBack kitchen={kitchen} forPot={forPot} />}>
      {readOnly === null ? null : <Strip tone="warn">{readOnly}</Strip>}
      {item.status === 'away' ? (
        <Strip>{`${away[item.how]} ${dayName(item.awayAtMs, kitchen.now.peek())}${item.why === '' ? '' : `: ${item.why}`}.`}</Strip>
      ) : null}
      <LevelMeasure thing={thing} level={level} units={units} />
      <dl class="shelf-facts">
        {labelOf(thing, kitchen.now.peek(), units).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
        <div>
          <dt>Id on its label</dt>
          <dd class="shelf-id">{itemId}</dd>
        </div>
      </dl>
      {thing.kind === 'acid' ? <AcidCautions acid={thing} /> : null}
      {item.making === null ? null : <MadeOf making={item.making} units={units} />}
      {readOnly === null ? <Acts kitchen={kitchen} one={one} open={setSheet} /> : null}
      <History item={item} units={units} nowMs={kitchen.now.peek()} />
      <Batches kitchen={kitchen} shelf={shelf} itemId={itemId} units={units} />
      {sheet === null ? null : (
        <ActSheet key={sheet} act={sheet} kitchen={kitchen} shelf={shelf} one={one} close={() => setSheet(null)} />
      )}
    </Page>
  )
}

const away = { 'put away': 'Put away', 'used up': 'Used up', discarded: 'Thrown out' } as const

/** What stands on the label, in full. */
function labelOf(thing: Thing, nowMs: number, units: Units): [string, string][] {
  const all: [string, string][] = [['Kind', kindWords[thing.kind].one]]
  switch (thing.kind) {
    case 'stock':
      all.push(['Dye', thing.dye], ['Strength', `${showPercent(thing.percentWV, units)} w/v`], ['Lot', thing.lot])
      all.push(['Made on', thing.madeOn ?? ''], ['Age', ageWords(thing.madeOn, nowMs)])
      if (thing.parts.length > 0) {
        all.push(['Mixed of', thing.parts.map(({ name, parts }) => `${parts} parts ${name}`).join(', ')])
      }
      break
    case 'acid':
      all.push(['Acid', thing.acid], ['Strength', strengthWords(thing, units)], ['Lot', thing.lot])
      break
    case 'yarn':
      all.push(['Fibre', thing.fibre], ['Treatment', treatedWords[thing.treated]], ['Lot', thing.lot])
      break
    case 'water':
      all.push(['Alkalinity', alkalinityWords(thing.alkalinityMgPerL, units)], ['Figure from', thing.source])
      break
    case 'pot': {
      const holds = thing.volumeML === null ? '' : showVolume(thing.volumeML, units)
      all.push(['Holds', holds], ['Made of', thing.material], ['Lid', thing.lid ? 'With a lid' : 'No lid'])
      break
    }
    case 'burner':
      all.push(['Heats by', thing.heat])
  }
  all.push(['Note', thing.note])
  return all.filter(([, value]) => value !== '')
}

function AcidCautions({ acid }: { acid: Acid }): preact.JSX.Element | null {
  const cautions = acidCautions(benchAcidOf(acid))
  if (cautions.length === 0) return null
  return (
    <>
      {cautions.map(({ id, title, say, source }) => (
        <CautionBox key={id} title={title} say={say} source={source} />
      ))}
      <p class="soft">{closingLine}</p>
    </>
  )
}

function MadeOf({ making, units }: { making: Making; units: Units }): preact.JSX.Element {
  const { how, powderG, powderLot, volumeML, from, water } = making
  const into = `made up to ${showVolume(volumeML, units)}${water === '' ? '' : ` with ${water}`}`
  const lot = powderLot === '' ? '' : `, jar lot ${powderLot}`
  const poured = from.map(
    (one) => `${showVolume(one.volumeML, units)} of ${one.name}${one.lot === '' ? '' : ` (lot ${one.lot})`}`
  )
  const words =
    how === 'powder'
      ? `${amountWords(powderG ?? 0, 'g', units)} of powder${lot}, ${into}.`
      : how === 'dilution'
        ? `${poured.join(', ')}, ${into}.`
        : `${poured.join(', ')}, poured together.`
  return (
    <p>
      <strong>How it was made: </strong>
      {words}
    </p>
  )
}

function Acts({
  kitchen,
  one,
  open
}: {
  kitchen: Kitchen
  one: OnShelf
  open: (act: SheetAct) => void
}): preact.JSX.Element {
  const { item, level } = one
  const counted = unitOf(item.thing) !== null
  const liquid = item.thing.kind === 'stock' || item.thing.kind === 'acid'
  const here = item.status === 'here'
  return (
    <div class="shelf-acts">
      {counted ? (
        <Pad onPress={() => open('level')}>{level === null ? 'Tell the level' : 'Correct the level'}</Pad>
      ) : null}
      {counted && item.thing.kind !== 'stock' && level !== null ? (
        <Pad onPress={() => open('refill')}>More put in</Pad>
      ) : null}
      <Pad onPress={() => kitchen.go(itemRoute(item.itemId, '/change'))}>Change</Pad>
      <Pad onPress={() => kitchen.go(itemRoute(item.itemId, '/label'))}>Label</Pad>
      {here ? <Pad onPress={() => open('away')}>Put away</Pad> : <Pad onPress={() => open('back')}>Bring back</Pad>}
      {here && counted ? <Pad onPress={() => open('used')}>Used up</Pad> : null}
      {here && liquid ? <Pad onPress={() => open('discard')}>Throw out</Pad> : null}
    </div>
  )
}
