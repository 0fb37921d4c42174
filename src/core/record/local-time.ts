// Times as the dyer's clock showed them: from UTC and the offset that the entry itself brought along, so that a record
// reads the same in any country, in summer and in winter.

/** "2031-06-14T10:32:07+02:00". `tzOffsetMin`: minutes east of UTC. */
export function localIso(atMs: number, tzOffsetMin: number): string {
  const local = new Date(atMs + tzOffsetMin * 60_000).toISOString().slice(0, 19)
  const size = Math.abs(tzOffsetMin)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${local}${tzOffsetMin < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`
}

/** "2031-06-14" */
export function localDay(atMs: number, tzOffsetMin: number): string {
  return localIso(atMs, tzOffsetMin).slice(0, 10)
}

/** "10:32", with seconds "10:32:07" */
export function localClock(atMs: number, tzOffsetMin: number, seconds = false): string {
  return localIso(atMs, tzOffsetMin).slice(11, seconds ? 19 : 16)
}
