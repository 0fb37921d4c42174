// What the photos, or the typed figures, say of the cloth; and the faults of a photo in a cloth's words.

import { isRefused } from '../../../../core/chemistry/answer.ts'
import {
  type ClothRead,
  type Fault,
  type Lab,
  type PhotoRead,
  photoWhite,
  severalPhotos,
  spoilsOne
} from '../../../../core/colour/index.ts'
import { faultSay } from '../../../parts/swatch-words.ts'
import { linesOf } from '../typed.ts'
import type { TypedCloth } from './draft.ts'

type Field = 'clean' | 'stained'

/** `read`: null while something is missing or wrong. */
export type Cloth = { read: ClothRead | null; problems: Record<Field, string | null>; faults: string | null }

export function typedCloth({ white, clean, stained }: TypedCloth): Cloth {
  const [before, after] = [clean, stained].map((text) => linesOf(text, { kind: 'lab', white }))
  const labs = { clean: before?.things.flat() ?? [], stained: after?.things.flat() ?? [] }
  const problems = { clean: before?.problem ?? null, stained: after?.problem ?? null }
  const whole = labs.clean.length > 0 && labs.stained.length > 0 && !problems.clean && !problems.stained
  return { read: whole ? { white, ...labs, together: false } : null, problems, faults: null }
}

/** Null while one is not read. What can't be read in half of the photos spoils them: there is one place of each. */
export function photographedCloth(reads: readonly (PhotoRead | null)[]): Cloth {
  const none = { read: null, problems: { clean: null, stained: null }, faults: null }
  const whole = reads.filter((read) => read !== null)
  if (whole.length === 0 || whole.length < reads.length) return none
  const gathered = severalPhotos(whole)
  if (isRefused(gathered))
    return { ...none, faults: gathered.problems.map(({ what, instead }) => `${what} ${instead}`).join(' ') }
  const [fault] = gathered.faults
  if (fault) return { ...none, faults: `${clothFaultSay(fault)}${spoilsOne(fault) ? '' : ' Take the photos anew.'}` }
  const lab = (of: (read: PhotoRead) => { lab: Lab }[]): Lab[] => whole.flatMap((read) => of(read)[0]?.lab ?? [])
  const labs = { clean: lab(({ undyed }) => undyed), stained: lab(({ skein }) => skein) }
  return { ...none, read: { white: photoWhite, ...labs, together: true } }
}

/** 'Too small, the stained cloth: …'. */
export function clothFaultSay(fault: Fault): string {
  const name = fault.of === 'skein' ? 'the stained cloth' : fault.of === 'undyed' ? 'the clean cloth' : 'the grey card'
  return faultSay({ ...fault, say: fault.say.replaceAll('the undyed yarn', 'the clean cloth') }, name)
}
