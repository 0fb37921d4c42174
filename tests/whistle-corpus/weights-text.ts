import type { Network } from './network.ts'

const short = (value: number): number => Number(value.toPrecision(4))
const row = (values: readonly number[]): string => `[${values.map(short).join(', ')}]`

/** So much must speak for it: chosen on the share that was not fitted to, as fit.ts prints it. */
export const ENOUGH = 2.1

/** The text of src/shell/whistle/weights.ts. */
export function weightsText({ from, spread, hidden, base }: Network): string {
  const layer = hidden.map(
    ({ bias, inputs, out }) => `{ bias: ${short(bias)}, inputs: ${row(inputs)}, out: ${short(out)} }`
  )
  return `// Made by tests/whistle-corpus/fit.ts from the part of the corpus that may be tuned on; not to be changed by hand.
// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: fitted, whatever they are near to

/** Middle and spread of each input, in the order of whistled.ts. */
export const FROM: readonly number[] = ${row(from)}
export const SPREAD: readonly number[] = ${row(spread)}

/** So much speaks for it that it is taken for a whistle. */
export const ENOUGH = ${ENOUGH}

export const weights: { base: number; hidden: readonly { bias: number; inputs: readonly number[]; out: number }[] } = {
  base: ${short(base)},
  hidden: [
    ${layer.join(',\n    ')}
  ]
}
`
}
