import type { Programme, Protocol } from '../../core/protocol/model.ts'
import { trialProgramme } from '../../core/protocol/programme/trial.ts'

/** Weight a protocol is read for, before anybody has weighed anything: that of `trialInputs`. */
export const READ_FOR_G = 100

/** A protocol made concrete as it presumes, for 100 g. Null: it can't be without the dyer's own figures. */
export function atDefaults(protocol: Protocol): Programme | null {
  const made = trialProgramme(protocol)
  return made.ok ? made.programme : null
}
