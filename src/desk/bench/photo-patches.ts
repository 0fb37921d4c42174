// A photograph of 12 megapixels with its marks, read and judged as the app does, against one plain pass over all its pixels:
// only patches may be touched.
import { isRefused } from '../../core/chemistry/answer.ts'
import {
  type Marks,
  type Photo,
  patchesAlong,
  readPhoto,
  severalPhotos,
  splitVerdict,
  spot
} from '../../core/colour/index.ts'
import { type Figure, ms, ratio } from './figure.ts'

const TRIES = 30
const WIDE = 4000
const HIGH = 3000
/** Reading may take this share of the plain pass. */
const GOAL = 0.1

export async function photoPatches(): Promise<Figure> {
  const photo: Photo = { data: new Uint8ClampedArray(WIDE * HIGH * 4), width: WIDE, height: HIGH }
  for (let at = 0; at < photo.data.length; at++) photo.data[at] = 90 + ((at * 7919) % 61)
  let [reading, pass, judging] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  // In turn, so that a slow moment hits all alike; the best of many tries is the one that nothing disturbed.
  for (let no = 0; no < TRIES; no++) {
    reading = Math.min(
      reading,
      timedMs(() => read(photo))
    )
    pass = Math.min(
      pass,
      timedMs(() => sumOf(photo.data))
    )
    const reads = [read(photo), read(photo), read(photo)]
    judging = Math.min(
      judging,
      timedMs(() => judged(reads))
    )
  }
  return {
    what: `The patches of a photo of 12 megapixels, best of ${TRIES}`,
    found: `${ms(reading)}; one pass over all pixels ${ms(pass)} (${ratio(reading, pass)}); the verdict on three such photos ${ms(judging)}`,
    goal: `${GOAL} x of the pass at most`,
    met: reading <= GOAL * pass
  }
}

function timedMs(work: () => unknown): number {
  const beganMs = performance.now()
  work()
  return performance.now() - beganMs
}

function sumOf(data: Uint8ClampedArray): number {
  let sum = 0
  for (let at = 0; at < data.length; at++) sum += data[at] as number
  return sum
}

/** A card, undyed yarn at both ends, seven swatches, eight places along a skein. */
const marks: Marks = {
  grey: spot(2000, 2600, 150),
  undyed: [spot(150, 800, 100), spot(3850, 800, 100)],
  series: Array.from({ length: 7 }, (_, nth) => spot(600 + 450 * nth, 1700, 120)),
  skein: patchesAlong({ x: 400, y: 800 }, { x: 3600, y: 900 }, 300, 8).map((patch, nth) => ({
    patch,
    at: nth / 7,
    band: nth + 1,
    zone: 'dyed'
  }))
}

function read(photo: Photo) {
  const answer = readPhoto(photo, marks)
  if (isRefused(answer)) throw new Error(answer.problems.map(({ what }) => what).join(' '))
  return answer
}

function judged(reads: ReturnType<typeof read>[]) {
  const gathered = severalPhotos(reads)
  if (isRefused(gathered)) throw new Error('the photos were refused')
  const { series, undyed, positions, noise } = gathered
  // Made-up pixels are all alike; whatever the verdict is, its sums are done.
  const far = series.map((point, nth) => ({ ...point, lab: { l: 20 + 10 * nth, a: 20, b: 20 + nth } }))
  const verdict = splitVerdict({ series: far, undyed, noise, skein: { positions, dry: true, fibres: 1 } })
  if (verdict.deltaH.length !== positions.length) throw new Error('not every position was judged')
  return verdict
}
