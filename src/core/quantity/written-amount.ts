import type { Measured } from './measured.ts'

/** An amount as a protocol gives it, not yet worked out for a pot. `of` is the material it is of, null where unsaid.
 * volume in mL, mass in g, owf in % of the dry goods' weight, gPerL in g for each litre of liquor, liquor as mL of
 * liquor for each g of goods, share as a part (0 to 1) of the whole amount of `of`, rest: all of it that is left. */
export type WrittenAmount = { asEntered: string; approx: boolean } & (
  | (Measured & { of: string | null })
  | { kind: 'owf'; percent: number; of: string | null }
  | { kind: 'gPerL'; value: number; of: string | null }
  | { kind: 'liquor'; ratio: number }
  | { kind: 'share'; share: number; of: string }
  | { kind: 'rest'; of: string }
)

/** The amount without what all of them carry. */
export type AmountKind = WrittenAmount extends infer A
  ? A extends WrittenAmount
    ? Omit<A, 'asEntered' | 'approx'>
    : never
  : never
