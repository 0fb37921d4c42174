import { notKnown } from './show-number.ts'

/** Time left as a clock: "0:24", "7:18", "1:02:07". Part seconds count as whole ones, so that "0:00" is never shown
 * before it is due. Past due it counts up behind a minus sign: "−0:24". */
export function showCountdown(leftMs: number): string {
  if (!Number.isFinite(leftMs)) return notKnown
  const left = Math.ceil(leftMs / 1000)
  const size = Math.abs(left)
  const hours = Math.floor(size / 3600)
  const minutes = Math.floor((size % 3600) / 60)
  const seconds = String(size % 60).padStart(2, '0')
  const clock = hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${seconds}` : `${minutes}:${seconds}`
  return left < 0 ? `−${clock}` : clock
}
