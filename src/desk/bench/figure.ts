// What a measure found, beside its goal. A goal is worked out from the baseline of the same run: machines differ.
export type Figure = {
  what: string
  /** The figures with their units, the baseline among them. */
  found: string
  goal: string
  /** Null: no goal was set. */
  met: boolean | null
}

export function say({ what, found, goal, met }: Figure): string {
  const verdict = met === null ? 'no goal set' : met ? 'met' : 'NOT MET'
  return `${what}\n  found  ${found}\n  goal   ${goal}\n  ${verdict}\n`
}

/** The value under which a share (0 to 1) of all lies, by the nearest rank. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? Number.NaN
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5)
}

export function ms(value: number): string {
  return `${value.toFixed(value < 10 ? 2 : 1)} ms`
}

export function ratio(value: number, baseline: number): string {
  return `${(value / baseline).toFixed(2)} x`
}
