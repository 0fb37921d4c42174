// The card that goes to a customer with a skein: what it is and how to keep it. Never how it was dyed: it is put together
// from the few fields named here, and nothing else of a record can come onto it.
import { localDay } from './local-time.ts'
import type { BatchRecord } from './record.ts'

/** What no record knows, in the dyer's own words; empty where nothing was said. */
export type SkeinCardText = {
  /** "75 % wool, 25 % nylon" */
  fibre: string
  /** Of one skein: "400 m" */
  metres: string
  care: string
  /** What the dyer's own bleed test showed. */
  bleed: string
}

export type SkeinCard = {
  colourway: string
  /** The batch's name: skeins of one lot match. */
  dyeLot: string
  /** "2031-06-14", the day it was begun, on the dyer's own clock. */
  day: string
  dyer: string | null
  fibre: string
  metres: string
  care: string
  bleed: string
  /** Which of the batch's skeins, and what it weighs. */
  skein: { tag: string; massG: number }
}

/** What the form for a batch begins with: the fibre as it was told at the start, and a bleed test where one was judged. */
export function cardTextFrom({ substrate, judgements }: BatchRecord): SkeinCardText {
  const judged = judgements.findLast(({ of }) => /\bbleed/i.test(of))
  return { fibre: substrate.fibre, metres: '', care: '', bleed: judged?.grade ?? '' }
}

/** A card for each skein of the batch. */
export function skeinCards({ identity, substrate, journal }: BatchRecord, text: SkeinCardText): SkeinCard[] {
  const tzOffsetMin = journal[0]?.said.tzOffsetMin ?? 0
  const same = {
    colourway: identity.colourway,
    dyeLot: identity.batchName,
    day: localDay(identity.startedAtMs, tzOffsetMin),
    dyer: identity.dyer
  }
  const { fibre, metres, care, bleed } = text
  return substrate.skeins.map((skein) => ({ ...same, fibre, metres, care, bleed, skein }))
}
