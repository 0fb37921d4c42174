// One batch beside its parent, or beside a target.
import { differenceCiede2000, modeLab65, useMode } from 'culori/fn'
import { type Answer, type Problem, refuse } from '../../chemistry/answer.ts'
import { chromaOf, deltaE, deltaHue, hueDegOf, type Lab } from '../lab.ts'
import { type TurnWord, turnWord } from '../verdict/turn-words.ts'
import type { White } from '../white.ts'
import { changeStep, type GreyStep } from './grey-scale.ts'

useMode(modeLab65)
const ciede2000 = differenceCiede2000()

/** A colour and the white that it is told against. */
export type Told = { lab: Lab; white: White }

export type Match = {
  /** CIEDE2000 with all weights 1 (Sharma, Wu and Dalal 2005; through culori). */
  de00: number
  /** CIE 1976. */
  deltaE: number
  /** Of the batch from the target: above 0 is lighter, and more vivid; ΔH* as in `deltaHue`. */
  deltaL: number
  deltaC: number
  deltaH: number
  /** Indicative: the step of ISO 105-A02 whose pair differs as much. */
  greyStep: GreyStep
  /** Which way, in a dyer's words, largest difference first; none under half a unit. */
  words: ('lighter' | 'deeper' | 'brighter' | 'duller' | TurnWord)[]
}

/** Refuses colours told against different whites: between them the figures mean nothing. */
export function matchTo(target: Told, batch: Told): Answer<Match> {
  if (target.white !== batch.white) {
    const what = `One colour is told against ${target.white}, the other against ${batch.white}.`
    return refuse({ code: 'does-not-fit', field: 'white', what, instead: 'Measure both in the same way.' })
  }
  const problems = [unsound('target', target.lab), unsound('batch', batch.lab)].filter((problem) => problem !== null)
  if (problems.length > 0) return refuse(...problems)
  const difference = deltaE(target.lab, batch.lab)
  const deltaL = batch.lab.l - target.lab.l
  const deltaC = chromaOf(batch.lab) - chromaOf(target.lab)
  const deltaH = deltaHue(target.lab, batch.lab)
  return {
    de00: ciede2000({ mode: 'lab65', ...target.lab }, { mode: 'lab65', ...batch.lab }),
    deltaE: difference,
    deltaL,
    deltaC,
    deltaH,
    greyStep: changeStep(difference),
    words: wordsOf(target.lab, deltaL, deltaC, deltaH)
  }
}

/** A difference smaller than this needs no word. Common practice, no source. */
const worthAWord = 0.5

function wordsOf(target: Lab, deltaL: number, deltaC: number, deltaH: number): Match['words'] {
  const said: [number, Match['words'][number]][] = [
    [deltaL, deltaL > 0 ? 'lighter' : 'deeper'],
    [deltaC, deltaC > 0 ? 'brighter' : 'duller'],
    [deltaH, turnWord(hueDegOf(target), deltaH)]
  ]
  return said
    .filter(([size]) => Math.abs(size) >= worthAWord)
    .sort(([one], [other]) => Math.abs(other) - Math.abs(one))
    .map(([, word]) => word)
}

function unsound(field: string, { l, a, b }: Lab): Problem | null {
  if ([l, a, b].every(Number.isFinite)) return null
  const what = `L*, a* and b* can't be ${l}, ${a} and ${b}.`
  return { code: 'not-a-number', field, what, instead: 'Give three numbers.' }
}
