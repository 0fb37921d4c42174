/** The start of a day of the calendar, "2031-06-14", in UTC; null: it is none, as the 30th of February. */
export function dayMs(day: string): number | null {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN
  return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(day) ? ms : null
}
