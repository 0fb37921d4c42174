// The flags and the estimate in plain words. They are also what the record keeps.
import type { about } from '../../chemistry/about.ts'
import { usualSyringe } from '../../chemistry/amounts/series.ts'
import {
  showDuration,
  showDurationRange,
  showMass,
  showNumber,
  showPercent,
  showTemperature,
  showVolume,
  type Units
} from '../../quantity/index.ts'
import { capital } from '../words.ts'
import type { Flag } from './flag.ts'
import type { PhAfter, PhEstimate, PhNot, PhRange } from './ph.ts'

/** `say`: what is so. `way`: what to do about it. `about`: the formula behind it, by the name of its function. */
export type FlagWords = { say: string; way: string; about: keyof typeof about | null }

export function flagWords(flag: Flag, units: Units): FlagWords {
  switch (flag.code) {
    case 'small-dose':
      return smallDose(flag, units)
    case 'over-boil':
      return overBoil(flag, units)
    case 'boil-presumed': {
      const [asked, presumed] = [flag.askedC, flag.presumedC].map((tempC) => showTemperature(tempC, units))
      const say = `A step wants ${asked}, and where water boils here is not said: ${presumed} is presumed.`
      return { say, way: 'Give your altitude.', about: 'boilingPointC' }
    }
    case 'pot-full':
      return potFull(flag, units)
    case 'ratio-changed': {
      const [from, to] = [ratioWords(flag.from), ratioWords(flag.to)]
      const say =
        flag.why === 'pot'
          ? `The pot changes the liquor ratio: ${to} in place of ${from}.`
          : `The liquor did not follow the goods: ${to}, and ${from} in ${flag.than ?? 'the earlier pot'}.`
      const way = 'Another ratio and pH change how dyes are taken up: compare with care.'
      return { say, way, about: 'scaleRecipe' }
    }
    case 'ratio-counted': {
      const { ratio, trueRatio, carriedML, pourML } = flag
      const carried = carriedML > 0 ? `, with ${showVolume(carriedML, units)} that the goods carry` : ''
      const say = `All that goes in stands at ${ratioWords(trueRatio)}${carried}; the protocol counts ${ratioWords(ratio)}.`
      const way =
        pourML === null
          ? 'What goes in is more than that already.'
          : `For that pour ${showVolume(pourML, units)} of water.`
      return { say, way, about: 'waterFor' }
    }
    case 'not-covered': {
      const takes = `${showNumber(flag.takesUp, 1, units)} mL for each g`
      const say = `The goods take up ${takes}: ${ratioWords(flag.trueRatio)} leaves none over them.`
      return { say, way: 'Take more liquor, or turn them so that nothing runs dry.', about: 'ratioOf' }
    }
    case 'alkalinity-left': {
      const alkalinity = `${showNumber(flag.alkalinityMgPerL, 0, units)} mg/L`
      const say = `The acid may not use up the water's alkalinity of ${alkalinity}: the bath then stays near neutral.`
      return { say, way: 'Measure after the first portion; take softer water or more acid.', about: 'bathPh' }
    }
    case 'ph-outside': {
      const say = `The protocol wants pH ${wantedWords(flag.wantLow, flag.wantHigh)}; ${phWords(flag)} is estimated.`
      return { say, way: "Give the water's alkalinity, and look at the acid and its strength.", about: 'acidFor' }
    }
  }
}

type Of<C extends Flag['code']> = Extract<Flag, { code: C }>

function smallDose({ label, of, doseML, errorPercent, percent, way }: Of<'small-dose'>, units: Units): FlagWords {
  const syringe = `${showNumber(usualSyringe.doubtML, 1, units)} mL`
  const error = showPercent(Math.round(errorPercent), units)
  const say = `${capital(label)}: ${showVolume(doseML, units)} of ${of} is too little for a syringe: ${syringe} either way is ${error} of it.`
  if (way === null || percent === null) return { say, way: 'Take a weaker one.', about: 'smallDose' }
  const [take, upTo, dose] = [way.takeML, way.makeUpToML, way.doseML].map((mL) => showVolume(mL, units))
  const weaker = showPercent(way.percent, units)
  const does = `Make ${take} of it up to ${upTo}: ${weaker}. Of that ${dose} is the same, to ${showPercent(Math.round(way.errorPercent * 10) / 10, units)}.`
  return { say, way: does, about: 'smallDose' }
}

function overBoil({ label, askedC, boilC, longer, counted }: Of<'over-boil'>, units: Units): FlagWords {
  const say = `${label}: ${showTemperature(askedC, units)} or the boil, whichever is lower. Here it boils at ${showTemperature(boilC, units, { digits: 1 })}.`
  if (longer === null) return { say, way: 'Heat to the boil.', about: 'boilingPointC' }
  const range = showDurationRange({ lowMs: longer.leastMs, highMs: longer.mostMs })
  const time = longer.leastMs === longer.mostMs ? '' : ` (${range})`
  const min = showDuration(longer.likelyMs)
  const way = counted ? `${min} longer, counted in.` : `Hold it ${min} longer${time}.`
  return { say, way, about: 'longerHold' }
}

function potFull(flag: Of<'pot-full'>, units: Units): FlagWords {
  const { wholeML, potML, keptML, keptRatio, goodsFitG, over } = flag
  const [whole, pot] = [showVolume(wholeML, units), showVolume(potML, units)]
  const say = over
    ? `${whole} does not fit the pot, which holds ${pot}.`
    : `${whole} fills more than two thirds of the pot, which holds ${pot}: it may boil over.`
  const kept = `${showVolume(keptML, units)} of water, ${ratioWords(keptRatio)}`
  const way =
    keptML > 0
      ? `Keep it to ${kept}, or dye ${showMass(goodsFitG, units)}, or take a larger pot.`
      : `Dye ${showMass(goodsFitG, units)}, or take a larger pot.`
  return { say, way, about: 'scaleRecipe' }
}

export function ratioWords(ratio: number): string {
  return `${showNumber(ratio, 1)}:1`
}

/** "4.2 to 5.0". */
export function phWords({ lowPh, highPh }: Pick<PhRange, 'lowPh' | 'highPh'>): string {
  return `${lowPh.toFixed(1)} to ${highPh.toFixed(1)}`
}

function wantedWords(low: number | null, high: number | null): string {
  if (low === null) return `at most ${high}`
  return high === null ? `at least ${low}` : `${low} to ${high}`
}

/** "after acid 1 of 3: 4.2 to 4.9 on a cooled spoon, 4.3 to 5.1 in the bath at 82 °C" */
export function phAfterWords({ after, spoon, bath }: PhAfter, units: Units): string {
  const hot = bath ? `, ${phWords(bath)} in the bath at ${showTemperature(bath.tempC, units)}` : ''
  return `After ${after}: ${phWords(spoon)} on a cooled spoon${hot}.`
}

export function alkalinityWords({ alkalinity }: Pick<PhEstimate, 'alkalinity'>): string {
  const { low, high, presumed } = alkalinity
  if (!presumed) return `Water with an alkalinity of ${high} mg/L.`
  return `The water's alkalinity is not known: ${low} to ${high} mg/L is presumed, tap water from soft to very hard.`
}

/** Why there is no estimate, or none from there on. */
export function phNotWords({ code, of }: PhNot): string {
  switch (code) {
    case 'no-acid':
      return 'No pH is estimated: no acid goes in.'
    case 'used-bath':
      return 'No pH is estimated: what is left in a used bath is not known.'
    case 'which-acid':
      return `No pH is estimated: which acid is “${of}”? Vinegar and citric acid can be worked out.`
    case 'other-acid':
      return `No pH is estimated with ${of}: only vinegar, acetic and citric acid can be worked out.`
    case 'strength':
      return `No pH is estimated: how strong is ${of}?`
    case 'effect':
      return `No pH is estimated from there on: what ${of} does to it is not known here.`
    case 'no-water':
      return `No pH is estimated in ${of}: how much water is in it is not known.`
    case 'outside':
      return `No pH is estimated after ${of}: the acid is outside what the estimate holds for.`
  }
}
