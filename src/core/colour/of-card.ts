// Light in a photograph made a colour, by the grey card that lies in it.
import { convertXyz65ToLab65 } from 'culori/fn'
import { adapt } from './adapt.ts'
import type { Lab } from './lab.ts'
import { type Linear, xyzOf } from './linear.ts'
import { d65 } from './white.ts'

/** How much light the usual grey card gives back. Common practice, no source. */
export const usualCardShare = 0.18

/** CIELAB against D65/2° of `light` in the same picture as a card whose light is `card` and which gives back the share
 * `cardShare` of it: the card itself comes out neutral. The card's light is above 0. */
export function labByCard(light: Linear, card: Linear, cardShare: number = usualCardShare): Lab {
  const seen = xyzOf(card)
  const white = { x: seen.x / cardShare, y: seen.y / cardShare, z: seen.z / cardShare }
  const { l, a, b } = convertXyz65ToLab65(adapt(xyzOf(light), white, d65))
  return { l, a, b }
}
