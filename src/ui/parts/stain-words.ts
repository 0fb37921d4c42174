// What a stain on a witness cloth says, in the words of the house.
import type { GreyStep, Stain } from '../../core/colour/index.ts'
import type { Compared } from '../../core/record/swatch.ts'
import { figureSay, stepWords } from './match-words.ts'

/** Common practice, no source. */
const words: Record<GreyStep, string> = {
  5: 'No stain that shows',
  4.5: 'Barely stained',
  4: 'Barely stained',
  3.5: 'Lightly stained',
  3: 'Lightly stained',
  2.5: 'Clearly stained',
  2: 'Clearly stained',
  1.5: 'Heavily stained',
  1: 'Heavily stained'
}

export function stainSay({ greyStep, chance }: Pick<Stain, 'greyStep' | 'chance'>): string {
  return chance === true ? 'No stain that these readings can show' : words[greyStep]
}

export function stainStepSay({ greyStep, deltaE, sd }: Pick<Stain, 'greyStep' | 'deltaE' | 'sd'>): string {
  return `Step ${stepWords(greyStep)}, ΔE ${figureSay(deltaE, sd)}`
}

export function stainAboutSay({ sd, white }: Pick<Stain, 'sd' | 'white'>): string {
  const doubt =
    sd === null
      ? 'How much these readings stray is not known: three photos or more, or readings typed several times, show it.'
      : '±: one standard deviation, by how the readings stray.'
  return `The step of the grey scale for staining (ISO 105-A03) that differs as much. Indicative: no grade of any standard. ${doubt} Clean and stained are told against ${white}°.`
}

/** 'White cotton, washed with it at 40 °C. By 3 photos.' */
export function stainOfSay({ cloth, done, by, photos }: Extract<Compared, { type: 'ClothStained' }>): string {
  const what =
    [cloth, done].filter((each) => each !== '').join(', ') || 'What cloth, and what it went through, is not said'
  const read =
    by === 'instrument'
      ? 'readings typed from an instrument'
      : photos.length === 1
        ? 'one photo'
        : `${photos.length} photos`
  return `${what}. By ${read}.`
}
