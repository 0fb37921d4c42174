// Tags that are tied to skeins: a page each for a label printer, or a sheet of 3 by 9 to cut.
import { useState } from 'preact/hooks'
import { showMass, type Units } from '../../../../core/quantity/index.ts'
import { batchCode } from '../../../../core/record/batch-code.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { foundShort } from '../../../../core/record/skein-verdict.ts'
import type { Judgement } from '../../../../core/record/swatch.ts'
import { TextField } from '../../../parts/field.tsx'
import { FitText } from '../../../parts/fit-text.tsx'
import { Qr } from '../../../parts/qr.tsx'
import { Paper, type PaperSize } from './paper.tsx'
import { sheetsOf } from './places.ts'
import './tags.css'

const PLACES = 27
const MOST = 270

type Skein = { tag: string; massG: number }
/** `verdict`: the latest on the skein. */
type OfBatch = { record: BatchRecord; verdict: Judgement | undefined; units: Units }
type TagProps = OfBatch & { skein: Skein; nth: number }

/** More than so many letters can't be read on a tag, however small. */
const NAME_MOST = 48

function short(text: string, most = NAME_MOST): string {
  const signs = [...text]
  return signs.length <= most ? text : `${signs.slice(0, most - 1).join('')}…`
}

function Tag({ record, verdict, units, skein, nth }: TagProps): preact.JSX.Element {
  const { identity, substrate, protocol } = record
  const { length } = substrate.skeins
  const which = length > 1 ? `, ${nth + 1} of ${length}` : ''
  return (
    <div class="print-tag" data-judged={verdict ? '' : undefined}>
      <Qr text={batchCode(identity.potId)} label={`Code of batch ${identity.batchName}`} />
      <div class="print-tag-words">
        <div class="print-tag-top">
          <FitText text={short(identity.colourway)} mostPx={27} leastPx={9} className="print-tag-name" tag="div" />
          <span class="print-tag-letter">{short(identity.letter, 3)}</span>
        </div>
        <p class="print-tag-skein">{short(`${skein.tag}  ${showMass(skein.massG, units)}${which}`, 34)}</p>
        <p>{short(identity.batchName)}</p>
        <p>{short(protocol.title)}</p>
        <p>{`Begun ${identity.startedAt.slice(0, 16).replace('T', ' ')}`}</p>
        {verdict ? <p class="print-tag-verdict">{foundShort(verdict)}</p> : null}
      </div>
    </div>
  )
}

/** A tag for each skein; a batch without skeins has one all the same. */
function skeinsOf({ substrate }: BatchRecord): readonly Skein[] {
  return substrate.skeins.length > 0 ? substrate.skeins : [{ tag: '', massG: substrate.goodsMassG }]
}

const paperHint =
  '62 x 29 mm, one for each skein. Paper does not outlive a bath: print on punched polypropylene or other film that does (common practice).'

export function TagPages({ record, verdict, units }: OfBatch): preact.JSX.Element {
  const skeins = skeinsOf(record)
  return (
    <>
      <p class="soft">{paperHint}</p>
      {skeins.map((skein, nth) => (
        <Paper key={`${nth} ${skein.tag}`} kind="tag" size="a4" label={`Tag of ${skein.tag}, as it prints`}>
          <Tag record={record} verdict={verdict} units={units} skein={skein} nth={nth} />
        </Paper>
      ))}
    </>
  )
}

export function TagSheets({ record, verdict, units, size }: OfBatch & { size: PaperSize }): preact.JSX.Element {
  const skeins = skeinsOf(record)
  const [many, setMany] = useState(String(skeins.length))
  const [first, setFirst] = useState('1')
  const manyWrong = countProblem(many, MOST)
  const firstWrong = countProblem(first, PLACES)
  const count = manyWrong === null ? Number(many) : skeins.length
  const from = firstWrong === null ? Number(first) : 1
  return (
    <>
      <p class="soft">{paperHint}</p>
      <div class="print-card-form">
        <TextField label="How many tags" kind="numeric" value={many} onInput={setMany} problem={manyWrong} />
        <TextField
          label="First place on the sheet"
          hint={`Counted from the top left, row by row, 1 to ${PLACES}: a sheet begun can be used up.`}
          kind="numeric"
          value={first}
          onInput={setFirst}
          problem={firstWrong}
        />
      </div>
      {sheetsOf(count, from, PLACES).map((places, page) => (
        <Paper key={page} kind="bare" size={size} label={`Sheet ${page + 1} of tags, as it prints`}>
          <div class="print-places print-tags">
            {places.map((nth, place) => (
              <div key={place} class="print-place" data-cut={nth === null ? undefined : ''}>
                {nth === null ? null : (
                  <Tag
                    record={record}
                    verdict={verdict}
                    units={units}
                    skein={skeins[nth % skeins.length] as Skein}
                    nth={nth % skeins.length}
                  />
                )}
              </div>
            ))}
          </div>
        </Paper>
      ))}
    </>
  )
}

function countProblem(text: string, most: number): string | null {
  const count = Number(text)
  if (text.trim() !== '' && Number.isInteger(count) && count >= 1 && count <= most) return null
  return `Write a whole number from 1 to ${most}.`
}
