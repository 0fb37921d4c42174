// The customer's skein cards: eight to a sheet, to cut. Never the recipe.
import { useEffect, useState } from 'preact/hooks'
import { showMass, type Units } from '../../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { cardTextFrom, type SkeinCard, type SkeinCardText, skeinCards } from '../../../../core/record/skein-card.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { dateName } from '../../../parts/day-name.ts'
import { TextField } from '../../../parts/field.tsx'
import { FitText } from '../../../parts/fit-text.tsx'
import { Strip } from '../../../parts/strip.tsx'
import { Paper, type PaperSize } from './paper.tsx'
import { sheetsOf } from './places.ts'
import './cards.css'

const PLACES = 8

type Props = { kitchen: Kitchen; record: BatchRecord; units: Units; size: PaperSize }

export function Cards({ kitchen, record, units, size }: Props): preact.JSX.Element {
  const { text, write, failed } = useCardText(kitchen, record)
  if (text === null) return <p>Opening what was written for the card.</p>
  const cards = skeinCards(record, text)
  return (
    <>
      <CardForm text={text} write={write} failed={failed} />
      {sheetsOf(cards.length, 1, PLACES).map((places, page) => (
        <Paper key={page} kind="bare" size={size} label={`Sheet ${page + 1} of skein cards, as it prints`}>
          <div class="print-places print-cards">
            {places.map((nth, place) => {
              const card = nth === null ? undefined : cards[nth]
              return <div key={place}>{card ? <Card card={card} units={units} /> : null}</div>
            })}
          </div>
        </Paper>
      ))}
    </>
  )
}

type Written = { text: SkeinCardText | null; write: (change: Partial<SkeinCardText>) => void; failed: string | null }

/** Kept with each letter, one write after the other: the last one written is the last one kept. */
function useCardText(kitchen: Kitchen, record: BatchRecord): Written {
  const { potId } = record.identity
  const [text, setText] = useState<SkeinCardText | null>(null)
  const [failed, setFailed] = useState<string | null>(null)
  const [writes] = useState({ last: Promise.resolve() })
  useEffect(() => {
    let here = true
    const found = kitchen.skeinCards?.read(potId).catch(() => {
      if (here) setFailed('What was written for this card before can’t be read.')
      return null
    })
    void Promise.resolve(found).then((kept) => {
      if (here) setText(kept ?? cardTextFrom(record))
    })
    return () => {
      here = false
    }
  }, [kitchen, potId])
  const write = (change: Partial<SkeinCardText>): void => {
    const next = { ...(text ?? cardTextFrom(record)), ...change }
    setText(next)
    writes.last = writes.last.then(async () => {
      const sent = await kitchen.skeinCards?.keep(potId, next)
      setFailed(!sent || sent.ok ? null : sent.say)
    })
  }
  return { text, write, failed }
}

type FormProps = { text: SkeinCardText; write: Written['write']; failed: string | null }

function CardForm({ text, write, failed }: FormProps): preact.JSX.Element {
  return (
    <>
      <p class="soft">
        A card for each skein. It never tells the recipe. What you write here is kept with this batch on this device.
      </p>
      <div class="print-card-form">
        <TextField
          label="Fibre, with shares"
          placeholder="75 % wool, 25 % nylon"
          value={text.fibre}
          onInput={(fibre) => write({ fibre })}
        />
        <TextField
          label="Length of a skein"
          placeholder="400 m"
          value={text.metres}
          onInput={(metres) => write({ metres })}
        />
        <TextField
          label="Care"
          placeholder="Hand wash cool, dry flat"
          value={text.care}
          onInput={(care) => write({ care })}
        />
        <TextField
          label="Bleed, indicative"
          hint="What your own test showed. It is no grade of a standard."
          placeholder="trace in the first wash"
          value={text.bleed}
          onInput={(bleed) => write({ bleed })}
        />
      </div>
      {failed === null ? null : (
        <Strip tone="warn" urgent>
          {failed}
        </Strip>
      )}
    </>
  )
}

function Card({ card, units }: { card: SkeinCard; units: Units }): preact.JSX.Element {
  const facts = [
    ['Fibre', card.fibre],
    ['Weight', showMass(card.skein.massG, units)],
    ['Length', card.metres],
    ['Dye lot', card.dyeLot],
    ['Care', card.care],
    ['Bleed', card.bleed === '' ? '' : `${card.bleed} (indicative)`]
  ].filter(([, value]) => value !== '')
  return (
    <div class="print-card">
      <FitText text={card.colourway} mostPx={30} leastPx={10} className="print-card-name" tag="div" />
      <dl>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p>{`Dyed ${dateName(card.day)}${card.dyer ? ` by ${card.dyer}` : ''}`}</p>
    </div>
  )
}
