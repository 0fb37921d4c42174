// How fast hot water burns adult skin. Orders of magnitude for a warning, no limit to go near to.

type Row = { tempC: number; seconds: number }

/** Third-degree burns; figures of Moritz & Henriques, Am. J. Pathol. 23 (1947) 695-720, seen in a secondary page. */
const thirdDegree: Row[] = [
  { tempC: 68.3, seconds: 1 },
  { tempC: 64.4, seconds: 2 },
  { tempC: 60.0, seconds: 5 },
  { tempC: 56.1, seconds: 15 },
  { tempC: 52.8, seconds: 60 },
  { tempC: 51.1, seconds: 180 },
  { tempC: 48.9, seconds: 300 }
]

/** Second-degree burns, the earlier harm; a trade page without citation. It disagrees with the table above at 49 °C. */
const secondDegree: Row[] = [
  { tempC: 45, seconds: 7200 },
  { tempC: 47, seconds: 1200 },
  { tempC: 48, seconds: 900 },
  { tempC: 49, seconds: 480 },
  { tempC: 51, seconds: 120 },
  { tempC: 55, seconds: 17 },
  { tempC: 60, seconds: 3 }
]

/** 120 °F and 49 °C are the same table point to the reader of either table. */
const SAME_POINT_C = 0.2

/** The shortest time in which water of `tempC` is told to burn an adult's skin, s; null under the coldest table point.
 * No interpolation: between two table points it is the shorter time of the hotter one, and where the tables disagree
 * the shorter of the two. Children burn faster. Over 85 °C it is 0: at once (inference from the tables). */
export function burnsWithinS(tempC: number): number | null {
  if (tempC >= 85) return 0
  const times = [thirdDegree, secondDegree].map((table) => shorterNeighbour(table, tempC)).filter((s) => s !== null)
  return times.length > 0 ? Math.min(...times) : null
}

function shorterNeighbour(table: Row[], tempC: number): number | null {
  const coldest = Math.min(...table.map((row) => row.tempC))
  if (tempC < coldest - SAME_POINT_C) return null
  const hotter = table.filter((row) => row.tempC >= tempC - SAME_POINT_C)
  // Hotter than the hottest row: its time is already too long, and the shortest we have.
  const times = (hotter.length > 0 ? hotter : table).map((row) => row.seconds)
  return hotter.length > 0 ? Math.max(...times) : Math.min(...times)
}
