/** Which of `count` things stands on which place of which sheet, `null` where a place stays empty. `first`: the place of
 * the first sheet to begin at, from 1; every sheet has `places`. */
export function sheetsOf(count: number, first: number, places: number): (number | null)[][] {
  const sheets = Math.ceil((count + first - 1) / places)
  return Array.from({ length: sheets }, (_, sheet) =>
    Array.from({ length: places }, (_, place) => {
      const nth = sheet * places + place - (first - 1)
      return nth >= 0 && nth < count ? nth : null
    })
  )
}
