// Days and times as the dyer's own clock has them.
// Written out here: browsers differ in where they put the comma.
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']
const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December'
]

export function dayName(atMs: number, nowMs: number): string {
  const now = new Date(nowMs)
  const day = (back: number): number => new Date(now.getFullYear(), now.getMonth(), now.getDate() - back).getTime()
  if (atMs >= day(0)) return 'Today'
  if (atMs >= day(1)) return 'Yesterday'
  const at = new Date(atMs)
  return `${weekdays[at.getDay()]} ${dateName(`${at.getFullYear()}-${at.getMonth() + 1}-${at.getDate()}`)}`
}

/** "14 June 2031" from "2031-06-14". */
export function dateName(day: string): string {
  const [year, month = 1, date] = day.split('-').map(Number)
  return `${date} ${months[month - 1]} ${year}`
}

/** "10:32" where the dyer is. */
export function clockOf(atMs: number): string {
  const at = new Date(atMs)
  return `${at.getHours()}:${String(at.getMinutes()).padStart(2, '0')}`
}
