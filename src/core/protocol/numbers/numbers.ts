// The numbers of a pot before it starts, worked out anew as its form is filled in.
import type { Programme } from '../model.ts'
import type { Flag } from './flag.ts'
import { type Earlier, flagsOf } from './flags.ts'
import { type Liquor, liquorOf } from './liquor.ts'
import { type PhEstimate, phOf } from './ph.ts'

export type Numbers = { flags: Flag[]; liquor: Liquor | null; ph: PhEstimate }

/** `wantedRatio`: the liquor ratio without the pot's limit; `usedBath`: nobody knows what is in it. */
export function numbersOf(
  programme: Programme,
  about: { usedBath: boolean; wantedRatio: number | null; earlier: Earlier | null }
): Numbers {
  const inputs = programme.given ?? { skeins: [], values: {}, materials: {}, roomC: null, boilC: null }
  const liquor = liquorOf(programme, inputs)
  const ph = phOf(programme, inputs, about.usedBath)
  return { flags: flagsOf(programme, inputs, liquor, ph, about.wantedRatio, about.earlier), liquor, ph }
}
