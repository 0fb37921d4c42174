// Verdicts as they are kept, for tests that need one and no colours.
import type { SplitVerdict } from '../../../src/core/colour/index.ts'
import type { Judgement, SwatchEvent } from '../../../src/core/record/swatch.ts'

type Judged = Extract<SwatchEvent, { type: 'SwatchJudged' }>
type Seen = Extract<SwatchEvent, { type: 'SwatchSeen' }>

export const T1 = Date.UTC(2031, 5, 15, 8, 30)

export function splitEvent(batchId: string | null, part: Partial<SplitVerdict> = {}): Judged {
  const verdict: SplitVerdict = {
    verdict: 'split',
    deltaH: [],
    size: { deltaH: 9.1, sd: 0.8 },
    smallestVisibleSplit: 2.9,
    lighterBy: 20,
    turn: { word: 'yellower', fromBand: 4 },
    why: { code: 'runs-one-way', say: 'It turns yellower from band 4.', settle: 'The residue would support it.' },
    ...part
  }
  return {
    type: 'SwatchJudged',
    batchId,
    by: 'photo',
    white: 'D65/2',
    photos: [],
    dry: true,
    fibres: 1,
    readings: [],
    verdict
  }
}

export const seenEvent = (batchId: string | null): Seen => ({
  type: 'SwatchSeen',
  batchId,
  says: 'only-lighter',
  words: 'Paler to the tip.',
  light: '',
  dry: true
})

export function judgement(found: Judgement['found'], atMs = T1): Judgement {
  return { key: `${found.batchId} ${atMs}`, atMs, tzOffsetMin: 0, by: 'dyer A', found, photos: [] }
}
