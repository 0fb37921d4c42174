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
  return `${weekdays[at.getDay()]} ${at.getDate()} ${months[at.getMonth()]} ${at.getFullYear()}`
}

/** "10:32" where the dyer is. */
export function clockOf(atMs: number): string {
  const at = new Date(atMs)
  return `${at.getHours()}:${String(at.getMinutes()).padStart(2, '0')}`
}
