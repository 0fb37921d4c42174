// The pH strips that the dyer reads: the steps on their box, the seconds of their maker, and their lot.

/** `steps`: pH rising. `seconds`: 0 where nobody set them. `lot`: '' where nobody noted it. */
export type PhStrip = { steps: number[]; seconds: number; lot: string }

/** Halves from end to end, as most boxes have them. Common practice, no source. */
export const usualStrip: PhStrip = { steps: Array.from({ length: 29 }, (_, i) => i / 2), seconds: 0, lot: '' }

export function isPhStrip(value: unknown): boolean {
  const { steps, seconds, lot } = (value ?? {}) as Partial<PhStrip>
  return Array.isArray(steps) && steps.length > 1 && typeof seconds === 'number' && typeof lot === 'string'
}
