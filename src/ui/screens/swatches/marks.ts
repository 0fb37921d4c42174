// The marks as a dyer puts them: places as shares of the picture, so that they carry over to the next photo of the same
// things whatever its size.
import { type Marks, patchesAlong, type Spot, spot, type Zone } from '../../../core/colour/index.ts'

/** What is marked, alike in all photos: a skein along a line or by spots in its order, or a cloth that is clean in one place
 * and stained in another. `spotShare` and `wideShare`: half a spot, and the width of the skein's line, as a
 * share of the picture's shorter side. `wicking`: so many bands at the end were above the liquor. `tabs`: what each swatch
 * of the series is called where a batch dyed it, else null. */
export type Shape = {
  of: 'skein' | 'cloth'
  along: 'line' | 'spots'
  undyed: number
  series: number
  bands: number
  wicking: number
  spotShare: number
  wideShare: number
  tabs: string[] | null
}

export const usualShape: Shape = {
  of: 'skein',
  along: 'line',
  undyed: 2,
  series: 5,
  bands: 8,
  wicking: 0,
  spotShare: 0.035,
  wideShare: 0.12,
  tabs: null
}
/** Read as undyed yarn and a skein of one spot are: the same light falls on both. */
export const clothShape: Shape = { ...usualShape, of: 'cloth', along: 'spots', undyed: 1, series: 0, bands: 1 }
export const limits = { undyed: [0, 2], series: [0, 10], bands: [3, 20] } as const

export type MarkId = 'grey' | 'from' | 'to' | `skein ${number}` | `undyed ${number}` | `series ${number}`
export type Mark = { id: MarkId; label: string; letter: string }

/** Shares of the picture, 0 to 1 from its upper left corner. */
export type Places = Partial<Record<MarkId, Spot>>

/** In the order in which they are put. */
export function marksOf(shape: Shape): Mark[] {
  const { of, undyed, series, tabs } = shape
  const grey: Mark = { id: 'grey', label: 'Grey card', letter: 'G' }
  if (of === 'cloth') {
    return [
      grey,
      { id: 'undyed 0', label: 'Clean cloth', letter: 'C' },
      { id: 'skein 0', label: 'Stained cloth', letter: 'S' }
    ]
  }
  return [
    grey,
    ...skeinMarks(shape),
    ...each(undyed, (nth): Mark => {
      const where = undyed === 2 ? (nth === 0 ? ' by A' : ' by B') : ''
      return { id: `undyed ${nth}`, label: `Undyed yarn${where}`, letter: `U${nth + 1}` }
    }),
    ...each(
      series,
      (nth): Mark => ({
        id: `series ${nth}`,
        label: `Series swatch${tabs?.[nth] ? `, ${tabs[nth]}` : ''}`,
        letter: `${nth + 1}`
      })
    )
  ]
}

function skeinMarks({ along, bands }: Shape): Mark[] {
  if (along === 'line') {
    return [
      { id: 'from', label: 'Skein, end A', letter: 'A' },
      { id: 'to', label: 'Skein, end B', letter: 'B' }
    ]
  }
  return each(bands, (nth) => {
    const end = nth === 0 ? ', at end A' : nth === bands - 1 ? ', at end B' : ''
    return { id: `skein ${nth}`, label: `Skein, spot ${nth + 1}${end}`, letter: `S${nth + 1}` }
  })
}

const each = <T>(count: number, make: (nth: number) => T): T[] => Array.from({ length: count }, (_, nth) => make(nth))

/** The bands at the end that were above the liquor. */
export function zoneOf({ bands, wicking }: Pick<Shape, 'bands' | 'wicking'>, nth: number): Zone {
  return nth >= bands - wicking ? 'wicking' : 'dyed'
}

export function stillToMark(shape: Shape, places: Places): Mark[] {
  return marksOf(shape).filter(({ id }) => !places[id])
}

/** '41 % across, 80 % down', for whoever does not see the picture. */
export function whereWords(place: Spot | undefined): string {
  if (!place) return 'not marked yet'
  return `${Math.round(100 * place.x)} % across, ${Math.round(100 * place.y)} % down`
}

export function moved({ x, y }: Spot, dx: number, dy: number): Spot {
  const within = (share: number): number => Math.min(1, Math.max(0, share))
  return { x: within(x + dx), y: within(y + dy) }
}

/** Where an unmarked one begins under the keyboard: beside the last that was put, else in the middle. */
export function startOf(shape: Shape, places: Places, id: MarkId): Spot {
  const marks = marksOf(shape)
  const before = marks
    .slice(
      0,
      Math.max(
        0,
        marks.findIndex((mark) => mark.id === id)
      )
    )
    .findLast((mark) => places[mark.id])
  const last = before && places[before.id]
  return last ? moved(last, last.x < 0.9 ? 0.08 : 0, 0) : { x: 0.5, y: 0.5 }
}

/** The marks of a series whose swatches are others now: each keeps the place of its own name. */
export function movedSeries(places: Places, before: readonly string[], after: readonly string[]): Places {
  const rest = Object.entries(places).filter(([id]) => !id.startsWith('series '))
  const kept = after.flatMap((name, nth) => {
    const place = places[`series ${before.indexOf(name)}`]
    return place ? [[`series ${nth}`, place]] : []
  })
  return Object.fromEntries([...rest, ...kept])
}

type Size = { widthPx: number; heightPx: number }

/** As the readings want them, in pixels; null while any is missing. */
export function pixelMarks(shape: Shape, places: Places, { widthPx, heightPx }: Size): Marks | null {
  const at = (id: MarkId): Spot | null => {
    const place = places[id]
    return place ? { x: place.x * widthPx, y: place.y * heightPx } : null
  }
  if (stillToMark(shape, places).length > 0) return null
  const short = Math.min(widthPx, heightPx)
  const half = shape.spotShare * short
  const spots = (of: 'undyed' | 'series' | 'skein', count: number) =>
    each(count, (nth) => {
      const { x, y } = at(`${of} ${nth}`) as Spot
      return spot(x, y, half)
    })
  const grey = at('grey') as Spot
  const skein =
    shape.along === 'spots'
      ? spots('skein', shape.bands)
      : patchesAlong(at('from') as Spot, at('to') as Spot, shape.wideShare * short, shape.bands)
  return {
    grey: spot(grey.x, grey.y, half),
    undyed: spots('undyed', shape.undyed),
    series: spots('series', shape.series),
    skein: skein.map((patch, nth) => ({
      patch,
      at: (nth + 0.5) / shape.bands,
      band: nth + 1,
      zone: zoneOf(shape, nth)
    }))
  }
}

/** The placed mark within `reach` of a place, both in px on the screen; null: none. */
export function nearest(shape: Shape, places: Places, at: Spot, size: Size, reach: number): MarkId | null {
  let best: MarkId | null = null
  let far = reach
  for (const { id } of marksOf(shape)) {
    const place = places[id]
    if (!place) continue
    const distance = Math.hypot((place.x - at.x) * size.widthPx, (place.y - at.y) * size.heightPx)
    if (distance <= far) [best, far] = [id, distance]
  }
  return best
}
