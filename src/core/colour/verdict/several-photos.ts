// Several photographs of the same things -> what the verdict is given: averages, and the noise by how they differ.
import { type Answer, refuse } from '../../chemistry/answer.ts'
import { addOuter, type Covariance, meanLab, minus, noCovariance, scaled, tripleOf } from '../covariance.ts'
import type { Lab } from '../lab.ts'
import { type Fault, markName } from '../photo/faults.ts'
import type { PhotoRead, Placed } from '../photo/read-photo.ts'
import type { Noise, Point, Position } from './given.ts'

export type Gathered = { series: Point[]; undyed: Point | null; positions: Position[]; noise: Noise; faults: Fault[] }

/** Of at least one photo, all with the same marks in the same order. A fault counts when half of the photos have it. */
export function severalPhotos(photos: readonly PhotoRead[]): Answer<Gathered> {
  const [first] = photos
  if (!first) {
    const what = 'There is no photo.'
    return refuse({
      code: 'missing',
      field: 'photos',
      what,
      instead: 'Give at least one; three or more show the noise.'
    })
  }
  const differs = photos.findIndex(
    ({ series, skein, undyed }) =>
      series.length !== first.series.length ||
      skein.length !== first.skein.length ||
      undyed.length !== first.undyed.length
  )
  if (differs > 0) {
    const what = `Photo ${differs + 1} has other marks than photo 1.`
    return refuse({ code: 'does-not-fit', field: 'photos', what, instead: 'Mark the same things in every photo.' })
  }
  const things = (of: (photo: PhotoRead) => Placed[]): Placed[][] =>
    of(first).map((_, nth) => photos.map((photo) => of(photo)[nth] as Placed))
  const series = things(({ series }) => series)
  const skein = things(({ skein }) => skein)
  const undyed = things(({ undyed }) => undyed)
  return {
    series: series.map(average),
    undyed: undyed.length === 0 ? null : average(undyed.flat()),
    positions: first.skein.map(({ at, band, zone }, nth) => ({ ...average(skein[nth] ?? []), at, band, zone })),
    noise: {
      ...repeatNoise([...series, ...skein].map((thing) => thing.map(({ lab }) => lab))),
      photos: photos.length,
      light: first.light && meanLab(photos.flatMap(({ light }) => light ?? []))
    },
    faults: common(photos)
  }
}

/** The same unevenness of the yarn is in every photo: more of them make `doubt` no smaller. */
function average(readings: Placed[]): Point {
  const doubt = noCovariance()
  for (const reading of readings) {
    for (const i of [0, 1, 2] as const) {
      for (const j of [0, 1, 2] as const) doubt[i][j] += reading.doubt[i][j] / readings.length
    }
  }
  const places = readings.flatMap(({ lightAt }) => lightAt ?? [])
  const lightAt = places.length === 0 ? null : places.reduce((sum, place) => sum + place, 0) / places.length
  return { lab: meanLab(readings.map(({ lab }) => lab)), doubt, lightAt }
}

/** Noise of one reading from things that were each read several times, in the same photos. What a whole photo has in
 * common (its light, its card) is taken out: the verdict compares within a picture only. */
export function repeatNoise(things: readonly (readonly Lab[])[]): { repeat: Covariance; freedom: number } {
  const photos = Math.min(...things.map((thing) => thing.length))
  const freedom = (things.length - 1) * (photos - 1)
  const sum = noCovariance()
  if (!(freedom > 0)) return { repeat: sum, freedom: 0 }
  const means = things.map((thing) => meanLab(thing.slice(0, photos)))
  const away = things.map((thing, nth) => thing.slice(0, photos).map((lab) => minus(lab, means[nth] as Lab)))
  for (let photo = 0; photo < photos; photo++) {
    const whole = meanLab(away.map((thing) => thing[photo] as Lab))
    for (const thing of away) addOuter(sum, tripleOf(minus(thing[photo] as Lab, whole)))
  }
  return { repeat: scaled(sum, 1 / freedom), freedom }
}

function common(photos: readonly PhotoRead[]): Fault[] {
  const keyOf = (fault: Fault): string => `${fault.code} ${markName(fault)}`
  const all = photos.flatMap(({ faults }) => faults)
  return [...new Map(all.map((fault) => [keyOf(fault), fault])).values()].filter(
    (fault) => 2 * all.filter((other) => keyOf(other) === keyOf(fault)).length >= photos.length
  )
}
