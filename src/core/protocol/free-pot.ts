// A pot without a protocol: one open step that only a person ends. What is done meanwhile is told as it is done, and can
// be made a protocol of afterwards.
import type { Programme, ProgrammeInputs, Protocol } from './model.ts'
import { type ProgrammeMade, programmeOf } from './programme.ts'

/** As a text of the protocol language, so that a record can be read for ever. */
export const freeText = `strandline: 1
title: Free pot
about: No protocol. What is done is told as it is done.
steps:
  - hold:
      id: free
      until: {person: finished}
      expect: 12 h
      look every: 15 min
      call: Look at the pot
      knot: Free
`

/** What the reader makes of that text; a test holds the two together. */
export const freeProtocol: Protocol = {
  strandline: 1,
  title: 'Free pot',
  about: 'No protocol. What is done is told as it is done.',
  use: null,
  trouble: null,
  demo: false,
  kitchen: null,
  late: 'shift',
  inputs: [],
  materials: [],
  liquorRatio: null,
  startC: 20,
  roomC: 20,
  parent: 'none',
  cautions: [],
  steps: [
    {
      word: 'hold',
      id: 'free',
      fields: {
        id: 'free',
        until: { person: 'finished' },
        expect: '12 h',
        'look every': '15 min',
        call: 'Look at the pot',
        knot: 'Free'
      }
    }
  ],
  gaps: []
}

/** The programme of a free pot for the goods given, with its step open. Refuses as programmeOf does. */
export function freeProgramme(inputs: ProgrammeInputs): ProgrammeMade {
  const made = programmeOf(freeProtocol, inputs)
  return made.ok ? { ok: true, programme: opened(made.programme) } : made
}

/** Marks the one step of a free pot as open. */
export function opened(programme: Programme): Programme {
  return {
    ...programme,
    steps: programme.steps.map((node) =>
      node.node === 'step' ? { ...node, open: true, doing: 'Free pot', done: 'finished' } : node
    )
  }
}

/** Was it a pot without a protocol? */
export function isFree(programme: Programme): boolean {
  return programme.steps.some((node) => node.node === 'step' && node.open === true)
}
