// What a protocol comes to as it presumes: how long it takes, and what to set out.
import type { Programme } from '../../core/protocol/model.ts'
import { showDose, type Units } from '../../core/quantity/index.ts'
import { READ_FOR_G } from './at-defaults.ts'
import { spanWords } from './estimate-words.ts'
import './programme-facts.css'

export function ProgrammeFacts({ programme }: { programme: Programme }): preact.JSX.Element {
  return (
    <dl class="programme-facts">
      <div>
        <dt>On the clock</dt>
        <dd>{spanWords(programme.estimate.clock)}</dd>
      </div>
      <div>
        <dt>Hands</dt>
        <dd>{spanWords(programme.estimate.hands)}</dd>
      </div>
      <div>
        <dt>Worked out for</dt>
        <dd>{`${READ_FOR_G} g, with the answers it presumes`}</dd>
      </div>
    </dl>
  )
}

export function SetOut({ programme, units }: { programme: Programme; units: Units }): preact.JSX.Element {
  return (
    <ul class="programme-out">
      {programme.setOut.map((item) => (
        <li key={item.id}>
          <strong>{`${item.label}: ${showDose(item.amount, units)} of ${item.amount.of}`}</strong>
          {item.sum === '' ? null : <span class="soft">{item.sum}</span>}
        </li>
      ))}
    </ul>
  )
}
