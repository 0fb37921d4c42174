import type { Programme, Protocol } from '../../core/protocol/model.ts'
import { trialInputs } from '../../core/protocol/programme/trial.ts'
import { programmeOf } from '../../core/protocol/programme.ts'

/** Weight a protocol is read for, before anybody has weighed anything: that of `trialInputs`. */
export const READ_FOR_G = 100

/** The list works out every protocol each time it is drawn. */
const worked = new WeakMap<Protocol, Programme | null>()

/** A protocol made concrete as it presumes, for 100 g. Null: it can't be without the dyer's own figures. */
export function atDefaults(protocol: Protocol): Programme | null {
  const known = worked.get(protocol)
  if (known !== undefined) return known
  const made = programmeOf(protocol, trialInputs(protocol))
  const programme = made.ok ? made.programme : null
  worked.set(protocol, programme)
  return programme
}
