// Seeded chance for photographs: the same on every machine. The normal curve comes on top of what sounds need.
import { type Chance, chanceOf } from '../whistle-corpus/chance.ts'

export type PhotoChance = Chance & { normal(): number }

/** A table of the normal curve in a shuffled order: a photograph takes half a million of them. */
export const normals = ((): Float32Array => {
  const chance = chanceOf(20_310_614)
  return Float32Array.from({ length: 65_536 }, () => {
    const [radius, angle] = [Math.sqrt(-2 * Math.log(1 - chance.unit())), 2 * Math.PI * chance.unit()]
    return radius * Math.cos(angle)
  })
})()

export function photoChance(seed: number): PhotoChance {
  const chance = chanceOf(seed)
  const { unit } = chance
  return { ...chance, normal: () => normals[(unit() * 65_536) | 0] as number }
}
