import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { readEntries } from '../../../src/core/pot/read-entry.ts'
import { exportRecord, type SwatchesRead } from '../../../src/core/record/export-record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { comparisonsOf, isKnownSwatchEvent, judgementsOf, type SwatchEvent } from '../../../src/core/record/swatch.ts'
import { mossFinished } from './moss.ts'
import { judgedSplit, matched, photoKept, seenLighter, shot, skeinEntries, stained } from './skein-found.ts'

const schema = JSON.parse(readFileSync(new URL('../../../public/batch-record.schema.json', import.meta.url), 'utf8'))
const valid = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true }).compile(
  schema
)

const letGo: SwatchEvent = { type: 'MediaTrimmed', sha256: shot.sha256, why: 'to make room' }
const entries = skeinEntries('pot-a', [
  photoKept(),
  judgedSplit('pot-a'),
  seenLighter('pot-a'),
  letGo,
  matched('pot-a'),
  stained('pot-a')
])
const whole: SwatchesRead = { entries, damaged: [], unknown: false }

// biome-ignore lint/suspicious/noExplicitAny: a document to be broken in any place
function exported(swatches: SwatchesRead = whole): any {
  const bench = mossFinished()
  const record = recordOf(bench.entries)
  if (!record) throw new Error('no record')
  return JSON.parse(exportRecord(record, bench.entries, swatches, 0))
}

function isTaken(document: unknown): boolean {
  const taken = valid(document)
  if (!taken) console.info(JSON.stringify(valid.errors?.slice(0, 3)))
  return taken
}

describe('what was found of a skein, in the exported record of its batch', () => {
  it('is there with readings, marks, verdicts and what was let go, as the schema says, judged by ajv', () => {
    const document = exported()
    expect(isTaken(document)).toBe(true)
    expect(document.version).toBe(4)
    expect(document.swatches.entries).toEqual(entries)
    expect(document.swatches.entries[1].event.verdict.verdict).toBe('split')
  })

  it('reads back into the same verdicts, and each entry still has its checksum', () => {
    const read = readEntries<SwatchEvent>(exported().swatches.entries, true, isKnownSwatchEvent)
    expect(read).toEqual(whole)
    expect(judgementsOf(read.entries)).toEqual(judgementsOf(entries))
    expect(judgementsOf(read.entries)).toHaveLength(2)
    expect(comparisonsOf(read.entries).map(({ found }) => found.type)).toEqual(['SwatchMatched', 'ClothStained'])
  })

  it('is empty where nothing was judged, tells what is damaged, and is null where it could not be read', () => {
    expect(isTaken(exported({ entries: [], damaged: [], unknown: false }))).toBe(true)
    expect(isTaken(exported({ entries: [], damaged: [{ index: 0, why: 'cut' }], unknown: true }))).toBe(true)
    expect(isTaken(exported(null))).toBe(true)
  })

  it('may be of a kind that a later version adds', () => {
    const document = exported()
    document.swatches.entries[2].event = { type: 'SwatchWeighed', grams: 2 }
    expect(isTaken(document)).toBe(true)
  })

  it('was in no document before version 4, and is in each since', () => {
    const { swatches, ...older } = exported()
    expect(valid(older)).toBe(false)
    expect(isTaken({ ...older, version: 3 })).toBe(true)
    expect(valid({ ...older, version: 3, swatches })).toBe(false)
  })

  // biome-ignore lint/suspicious/noExplicitAny: as above
  it.each<[string, (events: any[]) => void]>([
    ['a photo without its marks', ([photo]) => delete photo.marks],
    ['a photo without its bytes’ name', ([photo]) => (photo.media.sha256 = 'x')],
    ['a mark without its place', ([photo]) => delete photo.marks.skein[0].at],
    ['a mark past the end', ([photo]) => (photo.marks.skein[0].at = 1.5)],
    ['a reading without its colour', ([photo]) => delete photo.readings[0].lab],
    ['a fault without its words', ([photo]) => delete photo.faults[0].say],
    ['a verdict nobody gives', ([, judged]) => (judged.verdict.verdict = 'fine')],
    ['a verdict without its reason', ([, judged]) => delete judged.verdict.why],
    ['a band without its doubt', ([, judged]) => delete judged.verdict.deltaH[0].sd],
    ['a verdict without its photos', ([, judged]) => delete judged.photos],
    ['an eye without a word', ([, , seen]) => delete seen.says],
    ['a photo that went without a reason', ([, , , gone]) => delete gone.why],
    ['a match without its light', ([, , , , match]) => delete match.match.white],
    ['a match without its doubt', ([, , , , match]) => delete match.match.whole.sd],
    ['a band of a match that is no pair', ([, , , , match]) => (match.match.bands[0].pair = 3)],
    ['a side nobody reads', ([, , , , match]) => (match.target.by = 'guess')],
    ['a step no scale has', ([, , , , , cloth]) => (cloth.stain.greyStep = 3.2)],
    ['a stain without its clean cloth', ([, , , , , cloth]) => delete cloth.stain.clean],
    ['single readings that are no colours', ([, judged]) => (judged.repeats = [[{ l: 40 }]])]
  ])('%s is not what the schema says', (_, breakIt) => {
    const document = exported()
    breakIt(document.swatches.entries.map(({ event }: { event: unknown }) => event))
    expect(valid(document)).toBe(false)
  })

  it('of another stream is not what the schema says', () => {
    const document = exported()
    document.swatches.entries[0].streamId = 'pot/pot-a'
    expect(valid(document)).toBe(false)
  })
})

describe('a photo of a skein that was let go', () => {
  const photosOf = (events: SwatchEvent[]) => judgementsOf(skeinEntries('pot-a', events))[0]?.photos

  it('stays named with its reason in every verdict it was judged by', () => {
    expect(photosOf([photoKept(), judgedSplit('pot-a'), letGo])).toEqual([{ ...shot, letGo: 'to make room' }])
    expect(photosOf([photoKept(), letGo, judgedSplit('pot-a')])).toEqual([{ ...shot, letGo: 'to make room' }])
  })

  it('and kept anew stands again', () => {
    expect(photosOf([photoKept(), judgedSplit('pot-a'), letGo, photoKept()])).toEqual([shot])
  })

  it('of one skein stands in the other that keeps the same picture', () => {
    const one = skeinEntries('pot-a', [photoKept(), judgedSplit('pot-a'), letGo])
    const other = skeinEntries('pot-b', [photoKept(), judgedSplit('pot-b')])
    expect(judgementsOf([...one, ...other]).map(({ photos }) => photos[0]?.letGo)).toEqual(['to make room', undefined])
    expect(judgementsOf([...other, ...one]).map(({ photos }) => photos[0]?.letGo)).toEqual([undefined, 'to make room'])
  })
})
