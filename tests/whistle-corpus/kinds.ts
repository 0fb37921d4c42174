// The kinds of sound that a whistle is mixed with, and that nothing may be heard in.
import { type Chance, chanceOf } from './chance.ts'
import { beeps, chopping, clanks, fan, kettle, water } from './sounds/kitchen.ts'
import { musicLike } from './sounds/music-like.ts'
import { type Part, speakers, speech } from './sounds/speech.ts'
import { talkLike } from './sounds/talk-like.ts'

export type Kind = { name: string; make(chance: Chance, seconds: number, part: Part): Float32Array }

export const alwaysThere: Kind[] = [
  { name: 'talk-like', make: talkLike },
  { name: 'music-like', make: musicLike },
  { name: 'beeps', make: beeps },
  { name: 'kettle', make: kettle },
  { name: 'fan', make: fan },
  { name: 'water', make: water },
  { name: 'chopping', make: chopping },
  { name: 'clanks', make: clanks }
]

/** Those of above, and talk from each synthesiser that is installed; the names of those that are not. */
export function kinds(): { there: Kind[]; missing: string[] } {
  const { there, missing } = speakers()
  const talk = there.map(
    (by): Kind => ({
      name: `talk (${by.program})`,
      make: (chance, seconds, part) => speech(by, part, chance, seconds)
    })
  )
  return { there: [...talk, ...alwaysThere], missing }
}

/** Far apart, so that no seed of one part is one of the other. */
const firstSeed: Record<Part, number> = { tune: 1_000_000, 'held-out': 500_000_000 }

/** The nth piece of a kind in a part. */
export function piece(kind: Kind, part: Part, nth: number, seconds: number): Float32Array {
  return kind.make(chanceOf(firstSeed[part] + nth * 64 + kind.name.length), seconds, part)
}

export function whistleChance(part: Part, nth: number): Chance {
  return chanceOf(firstSeed[part] + 200_000_000 + nth)
}
