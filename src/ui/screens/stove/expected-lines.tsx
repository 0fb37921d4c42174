import type { Expectation } from '../../../core/pot/expected/expectation.ts'
import type { Units } from '../../../core/quantity/units.ts'
import type { BathView } from './bath-view.ts'
import { expectedSay, phSay } from './expected-say.ts'
import './expected-lines.css'

type Props = { expected: Expectation | null; ph: BathView['ph']; units: Units }

/** What thermometer and strip tell. Loaded after the first drawing: no call waits for it. */
export function ExpectedLines({ expected, ph, units }: Props): preact.JSX.Element {
  return (
    <>
      {ph === null ? null : <p class="bath-ph number">{phSay(ph.reading, ph.made)}</p>}
      {expected === null ? null : <Heat expected={expected} units={units} />}
    </>
  )
}

function Heat({ expected, units }: { expected: Expectation; units: Units }): preact.JSX.Element {
  const said = expectedSay(expected, units)
  if (said.kind === 'never') {
    return (
      <p class="bath-never" role="status">
        <strong>{said.what}</strong> {said.instead}
      </p>
    )
  }
  return (
    <p class="bath-expected">
      <span class="number">{said.when}</span> <small>{said.from}</small>
    </p>
  )
}
