import type { RangeDraft } from './draft.ts'

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** A figure of a text, which is said in °F to whoever reads °F (`programme/in-fahrenheit.ts`). */
function degrees(tempC: number): string {
  return String(Math.round(tempC * 10) / 10)
}

/** Behind "at": "85–90 °C", "85 °C or more", "the boil". In °C, whatever the writer wrote it in. */
export function rangeWords({ lowC, highC, boil }: Omit<RangeDraft, 'shown'>): string {
  if (lowC !== null && highC !== null && highC !== lowC) return `${degrees(lowC)}–${degrees(highC)} °C`
  const only = lowC ?? highC
  if (boil || only === null) return 'the boil'
  const limit = highC === null ? ' or more' : lowC === null ? ' or less' : ''
  return `${degrees(only)} °C${limit}`
}
