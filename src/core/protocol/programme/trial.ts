import { trialValue } from '../inputs.ts'
import type { Programme, ProgrammeInputs, Protocol } from '../model.ts'
import { type ProgrammeMade, programmeOf } from '../programme.ts'

const tried = new WeakMap<Protocol, ProgrammeMade>()

/** The programme of `trialInputs`. Made once: reading a protocol ends with it, and showing one begins with it. */
export function trialProgramme(protocol: Protocol): ProgrammeMade {
  const made = tried.get(protocol) ?? programmeOf(protocol, trialInputs(protocol))
  tried.set(protocol, made)
  return made
}

/** Of a protocol that can only come to the same as another. */
export function triedAlready(protocol: Protocol, programme: Programme): void {
  tried.set(protocol, { ok: true, programme })
}

/** 100 g of goods and every input at its default: what a protocol is tried out with before any pot is started. */
export function trialInputs(protocol: Protocol): ProgrammeInputs {
  return {
    skeins: [{ tag: 'S1', massG: 100 }],
    values: Object.fromEntries(protocol.inputs.map((input) => [input.id, trialValue(input)])),
    // Any strength will do to see that the sums work out.
    materials: Object.fromEntries(
      protocol.materials
        .filter(({ kind, percent }) => percent === null && (kind === 'stock' || kind === 'acid'))
        .map(({ id, label }) => [id, { name: label, percent: 1, basis: 'w/v', densityGPerML: null }])
    ),
    roomC: null,
    boilC: null
  }
}
