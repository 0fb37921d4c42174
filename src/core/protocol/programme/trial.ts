import { trialValue } from '../inputs.ts'
import type { ProgrammeInputs, Protocol } from '../model.ts'

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
