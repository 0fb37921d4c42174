import type { Expectation } from '../../../core/pot/expected/expectation.ts'
import type { Units } from '../../../core/quantity/units.ts'
import { expectedSay } from './expected-say.ts'
import './expected-line.css'

/** Loaded after the first drawing: no call waits for it. */
export function ExpectedLine({ expected, units }: { expected: Expectation; units: Units }): preact.JSX.Element {
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
