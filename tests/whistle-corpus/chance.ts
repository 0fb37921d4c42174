// Seeded chance: the corpus is the same on every machine.
export type Chance = {
  /** 0 to 1. */
  unit(): number
  between(low: number, high: number): number
  /** As likely in each octave. */
  octaves(low: number, high: number): number
  pick<T>(list: readonly T[]): T
  yes(share: number): boolean
  /** White, -1 to 1. */
  noise(): number
}

/** Marsaglia's xorshift, 32 bits: fast enough for every sample of noise. */
export function chanceOf(seed: number): Chance {
  let state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ 0x5bd1e995) | 0 || 1
  const unit = (): number => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 4_294_967_296
  }
  for (let turn = 0; turn < 20; turn++) unit()
  const between = (low: number, high: number): number => low + (high - low) * unit()
  return {
    unit,
    between,
    octaves: (low, high) => low * (high / low) ** unit(),
    pick: (list) => list[Math.min(list.length - 1, Math.floor(unit() * list.length))] as never,
    yes: (share) => unit() < share,
    noise: () => unit() * 2 - 1
  }
}
