// The walls of a kitchen: a network of eight delays that feed each other.
import type { Chance } from './chance.ts'
import { fromDb, lowPass, RATE_HZ } from './filters.ts'

export type Room = {
  /** Seconds until an echo is 60 dB down. */
  decaySec: number
  /** What comes straight from the mouth over what comes from the walls, dB. */
  directDb: number
}

/** Kitchens, tiled and not; a third of the whistles come from so near that the room is not heard. */
export function someRoom(chance: Chance): Room | null {
  if (chance.yes(1 / 3)) return null
  return { decaySec: chance.octaves(0.2, 0.9), directDb: chance.between(0, 12) }
}

export function inRoom(dry: Float32Array, room: Room | null, chance: Chance): Float32Array {
  if (room === null) return dry
  const delays = Array.from({ length: 8 }, () => new Float32Array(Math.round(chance.octaves(0.007, 0.037) * RATE_HZ)))
  const gains = delays.map((line) => 10 ** ((-3 * line.length) / (room.decaySec * RATE_HZ)))
  const dull = delays.map(() => lowPass(chance.octaves(3_000, 7_000)))
  const at = delays.map(() => 0)
  const wet = new Float32Array(dry.length)
  for (let nth = 0; nth < dry.length; nth++) {
    const out = delays.map((line, which) =>
      (dull[which] as (sample: number) => number)(line[at[which] as number] as number)
    )
    const sum = out.reduce((whole, each) => whole + each, 0)
    wet[nth] = sum
    delays.forEach((line, which) => {
      // Householder's reflection: nothing is lost or gained between the lines but by their own gain.
      const fed = ((out[which] as number) - sum / 4) * (gains[which] as number)
      line[at[which] as number] = (dry[nth] as number) + fed
      at[which] = ((at[which] as number) + 1) % line.length
    })
  }
  return together(dry, wet, room.directDb)
}

function together(dry: Float32Array, wet: Float32Array, directDb: number): Float32Array {
  const level = (samples: Float32Array): number => Math.sqrt(samples.reduce((sum, each) => sum + each * each, 0)) + 1e-9
  const gain = (level(dry) / level(wet)) * fromDb(-directDb)
  return dry.map((sample, nth) => sample + (wet[nth] as number) * gain)
}
