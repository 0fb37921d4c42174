import { showNumber } from '../../core/quantity/index.ts'

/** Of something small that is weighed against others. */
export function exactBytes(bytes: number): string {
  return bytes < 1e6 ? `${showNumber(Math.ceil(bytes / 1000), 0)} kB` : `${showNumber(bytes / 1e6, 1)} MB`
}

/** Of the room on a device. */
export function roomBytes(bytes: number): string {
  if (bytes < 1e6) return 'under 1 MB'
  return bytes < 1e9 ? `${showNumber(bytes / 1e6, 0)} MB` : `${showNumber(bytes / 1e9, 1)} GB`
}
