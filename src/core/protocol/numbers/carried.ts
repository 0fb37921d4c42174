import type { Carries } from '../model.ts'

/** mL of water in a gram of dry goods as they go in. Common practice, no source. */
export const carriedPerG: Record<Carries, number> = { dry: 0, spun: 0.6, dripping: 2 }
