// The table: which caution belongs to which step. In the order of what does harm soonest.

import type { Step } from '../protocol/model.ts'
import { fahrenheitFromCelsius } from '../quantity/temperature-scale.ts'
import { aceticBand } from './acid-strength.ts'
import type { Caution } from './caution.ts'
import {
  acidOf,
  type CautionContext,
  HOT_C,
  handsIn,
  isAlkali,
  isBleach,
  isDisposal,
  isHot,
  isMicrowave,
  isMordant,
  isOven,
  isPowder,
  isReducer,
  isSteam,
  isVat,
  lifts
} from './hazard.ts'
import { burnsWithinS } from './scald.ts'
import { sources } from './sources.ts'

/** A caution is the same text for every dyer, so it names a temperature in both degrees. */
const degrees = (tempC: number): string => `${tempC} °C (${Math.round(fahrenheitFromCelsius(tempC))} °F)`

const burning = `Liquor at ${degrees(HOT_C)} burns within about ${burnsWithinS(HOT_C)} s, hotter liquor faster.`

export type Rule = Caution & { applies: (step: Step, context: CautionContext) => boolean }

const band = (step: Step, context: CautionContext): ReturnType<typeof aceticBand> | 'unknown' | null => {
  if (acidOf(step, context) !== 'acetic') return null
  return context.strengthPercent === null ? 'unknown' : aceticBand(context.strengthPercent)
}
const overHotBath = (step: Step, context: CautionContext): boolean =>
  acidOf(step, context) !== null && isHot(step, context)

const acids: Rule[] = [
  {
    id: 'acid-severe',
    title: 'Concentrated acetic acid',
    say: `Burns skin and eyes severely. Its vapour catches fire above ${degrees(39)}: no flame, no lit burner near. Goggles, gloves, fan on. Do not pour it into a hot bath: dilute it first, acid into cold water.`,
    short: 'Concentrated acid: away from the lit burner. Dilute first, acid into cold water.',
    source: sources.acetic,
    applies: (step, context) => band(step, context) === 'severe'
  },
  {
    id: 'acid-corrosive',
    title: 'Corrosive acid',
    say: 'Burns skin and eyes. Goggles, gloves, fan on. Keep it from the lit burner. Dilute it first, acid into cold water, never into a hot bath.',
    short: 'Corrosive acid: goggles, gloves. Dilute first, acid into cold water.',
    source: sources.acetic,
    applies: (step, context) => band(step, context) === 'corrosive'
  },
  {
    id: 'acid-unknown',
    title: 'Acid of unknown strength',
    say: 'Read the label before you open it. Until then take it for corrosive: goggles, gloves, fan on, away from the lit burner.',
    short: 'Acid of unknown strength: goggles, gloves. Read the label.',
    source: sources.acetic,
    applies: (step, context) => band(step, context) === 'unknown'
  },
  {
    id: 'acid-other',
    title: 'Strong acid',
    say: 'Read its safety data sheet before you open it. Goggles, gloves, fan on. Acid into cold water, slowly.',
    short: 'Strong acid: goggles, gloves. Acid into cold water.',
    source: sources.memory,
    applies: (step, context) => acidOf(step, context) === 'other'
  },
  {
    id: 'acid-irritant',
    title: 'Acid that irritates',
    say: 'Irritates skin and eyes. Goggles, gloves, fan on. Add it slowly, at the wall of the pot.',
    short: 'Acid irritates: goggles, gloves, add slowly.',
    source: sources.acetic,
    applies: (step, context) => band(step, context) === 'irritant'
  },
  {
    id: 'citric-dust',
    title: 'Citric acid dust',
    say: 'Dust irritates eyes and airways. Goggles, no draught. Dissolve it away from your face. Not in copper, zinc or aluminium.',
    short: 'Citric dust: goggles, no draught.',
    source: sources.citric,
    applies: (step, context) => acidOf(step, context) === 'citric' && isPowder(step, context)
  },
  {
    id: 'citric',
    title: 'Citric acid',
    say: 'Irritates eyes. Goggles. Not in copper, zinc or aluminium pots.',
    short: 'Citric acid: goggles.',
    source: sources.citric,
    applies: (step, context) => acidOf(step, context) === 'citric' && !isPowder(step, context)
  },
  {
    id: 'acid-vapour',
    title: 'Hot liquor, acid vapour',
    say: 'Gloves, face away, fan on. Skein rests on the rod over the pot.',
    short: 'Acid vapour: face away, fan on.',
    source: `${sources.acetic}; ${sources.practice}`,
    applies: overHotBath
  },
  {
    id: 'acid-mild',
    title: 'Mild acid',
    say: 'Stings in eyes and cuts. Gloves. Rinse splashes off at once.',
    short: 'Mild acid: gloves, mind your eyes.',
    source: sources.acetic,
    applies: (step, context) => band(step, context) === 'mild' && !overHotBath(step, context)
  },
  {
    id: 'acid-and-bleach',
    title: 'Never acid with bleach',
    say: 'Acid and bleach give off poisonous gas. Keep bleach off the bench. Rinse every vessel first.',
    short: 'Never acid with bleach.',
    source: sources.memory,
    applies: (step, context) => acidOf(step, context) !== null || isBleach(step)
  }
]

const chemicals: Rule[] = [
  {
    id: 'hydros',
    title: 'Reducing agent',
    say: 'Damp hydros can catch fire. Dry spoon, close the tin, away from heat. Sprinkle it in slowly and spread it: a plug can erupt. Goggles, gloves, fan on.',
    short: 'Hydros: dry spoon, slowly, spread it. Fan on.',
    source: sources.hydros,
    applies: (step) => isReducer(step)
  },
  {
    id: 'hydros-and-acid',
    title: 'Never hydros with acid',
    say: 'Hydros and acid give off poisonous gas. No acid near the vat. Air the goods out, rinse twice in plain water, then sour them in another vessel with the fan on.',
    short: 'Never hydros with acid.',
    source: `${sources.hydros}; ${sources.memory}`,
    applies: (step, context) => isReducer(step) || (isVat(step) && acidOf(step, context) !== null)
  },
  {
    id: 'alkali',
    title: 'Alkali',
    say: 'Irritates or burns eyes and skin. Goggles, gloves. Slowly into warm water, not hot.',
    short: 'Alkali: goggles, gloves, slowly into warm water.',
    source: sources.memory,
    applies: (step) => isAlkali(step)
  },
  {
    id: 'mordant',
    title: 'Mordant',
    say: 'Gloves, fan on. Keep it from children: iron salts poison a small child. No chrome, no tin.',
    short: 'Mordant: gloves, out of reach of children.',
    source: sources.metals,
    applies: (step) => isMordant(step)
  },
  {
    id: 'powder',
    title: 'Powder',
    say: 'Particle mask that fits (P2, FFP2, N95 or better), goggles, gloves. Still air, damp paper under it. Close the jar. Wipe up wet, do not sweep. Not over a steaming bath.',
    short: 'Powder: mask, still air, wipe wet.',
    source: `${sources.hse}; ${sources.craft}; mask class from memory`,
    applies: (step, context) => isPowder(step, context)
  }
]

const heats: Rule[] = [
  {
    id: 'hot-lift',
    title: 'Hot lift',
    say: `${burning} Long insulated gloves, tight sleeves, rod or tongs. Lift over the pot, let it drain there, never swing it over yourself.`,
    short: 'Hot lift: long gloves, rod, drain over the pot.',
    source: sources.scald,
    applies: (step, context) => lifts(step) && isHot(step, context)
  },
  {
    id: 'hot-liquor',
    title: 'Hot liquor',
    say: `${burning} Long gloves, tight sleeves. Open the lid away from your face. Nothing dropped in from above.`,
    short: 'Hot liquor: long gloves, face away.',
    source: sources.scald,
    applies: (step, context) => handsIn(step) && !lifts(step) && !overHotBath(step, context) && isHot(step, context)
  },
  {
    id: 'steam',
    title: 'Steam',
    say: 'Open the lid away from you. Tongs and long gloves. Look at the water: never let it boil dry.',
    short: 'Steam: open away, tongs, look at the water.',
    source: sources.memory,
    applies: (step) => isSteam(step)
  },
  {
    id: 'microwave',
    title: 'Microwave',
    say: 'Liquor can be hotter than boiling and erupt when moved. Let it stand first. Vent the wrap, open it away from you. Never let goods dry out. Use an oven that never heats food again.',
    short: 'Microwave: let it stand, open away, never dry.',
    source: sources.microwave,
    applies: (step) => isMicrowave(step)
  },
  {
    id: 'oven',
    title: 'Oven',
    say: 'Keep enough liquor in the covered pan. Open it away from you: steam. Use an oven that never heats food again.',
    short: 'Oven: enough liquor, open away from you.',
    source: sources.practice,
    applies: (step) => isOven(step)
  },
  {
    id: 'superheated',
    title: 'Boiling liquor',
    say: 'Nothing dry or powdered into liquor at the boil: it can boil up. Turn the heat down first, then add slowly.',
    short: 'At the boil: heat down first, add slowly.',
    source: sources.memory,
    applies: (step, context) => step.dose !== null && (context.bathTempC ?? 0) >= 95
  },
  {
    id: 'heat-on',
    title: 'Heat on',
    say: 'Stay by the pot. If you must leave, heat off first. Children and pets 1 m away, handles in, lid at hand, pot no more than two thirds full, fan on. An alarm can fail: set a kitchen timer too.',
    short: 'Stay by the pot. Leaving: heat off first.',
    source: `${sources.fire}; ${sources.practice}`,
    applies: (step, context) =>
      step.heat !== 'off' && (step.heat === 'on' || step.word === 'heat' || (context.heatOn && step.wait !== null))
  },
  {
    id: 'heat-off',
    title: 'Heat off',
    say: 'Turn the ring off and look that it is off. The ring and the pot stay hot.',
    short: 'Look that the ring is off. It stays hot.',
    source: sources.practice,
    applies: (step) => step.heat === 'off'
  },
  {
    id: 'cooling',
    title: 'Cooling',
    say: 'Only with the heat off: look again. Lid on, handles in, out of reach of children and pets.',
    short: 'Cooling: heat off, lid on, out of reach.',
    source: sources.memory,
    applies: (step, context) => step.word === 'cool' && !context.heatOn
  },
  {
    id: 'carry',
    title: 'Full pot',
    say: 'Do not carry a full hot pot. Ladle it out, or let it cool first. Clear, dry floor.',
    short: 'Do not carry a full hot pot.',
    source: sources.practice,
    applies: (step, context) => step.word === 'transfer' && isHot(step, context)
  },
  {
    id: 'disposal',
    title: 'Disposal',
    say: 'Exhausted, near neutral, in small volumes, to the sewer only if local rules allow it. Septic tank: ask first. Never to a storm drain or the garden. Stocks and mordant residues to the hazardous-waste point.',
    short: 'Disposal: as local rules say. Never to a storm drain.',
    source: sources.waste,
    applies: (step) => isDisposal(step)
  }
]

/** Every caution that belongs to a step, with the step it belongs to. */
export const rules: readonly Rule[] = [...acids, ...chemicals, ...heats]

/** Cautions of the whole session rather than of one step. */
export const general: readonly Caution[] = [
  {
    id: 'utensils',
    title: 'Dye tools only',
    say: 'Pots, spoons and ovens used for dye never return to food. No eating, no drinking here. Children and pets out. Nothing in food jars; label it and lock it away.',
    short: 'Dye tools never return to food.',
    source: sources.craft
  },
  {
    id: 'health',
    title: 'Health',
    say: 'Pregnant, asthma or allergies: ask a doctor before you handle dyes.',
    short: 'Pregnant, asthma, allergies: ask a doctor.',
    source: sources.memory
  },
  {
    id: 'spills',
    title: 'Spills',
    say: 'Powder: mist it, wipe it up wet. Strong acid: keep flames away, dilute, take it up, open a window. Dry the floor at once.',
    short: 'Spills: powder wet, acid diluted, floor dry.',
    source: sources.spills
  },
  {
    id: 'burns',
    title: 'Burns',
    say: 'Cool running water for 20 min, rings off, cover it. Large, on the face, a child, or something in the eye: call for help.',
    short: 'Burn: cool running water, 20 min.',
    source: sources.memory
  }
]
