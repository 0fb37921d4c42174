// What to set out, with the sum that gave it. Each portion of acid is a cup of its own with its name on it, so that a
// forgotten one is seen on the bench.
import type { Programme, SetOut } from '../../../core/protocol/model.ts'
import { showDose, type Units } from '../../../core/quantity/index.ts'

type Props = {
  programme: Programme
  potName: string
  units: Units
  setOut: readonly string[]
  change: (setOut: string[]) => void
}

export function Bench({ programme, potName, units, setOut, change }: Props): preact.JSX.Element {
  const done = programme.setOut.filter((item) => setOut.includes(item.id)).length
  return (
    <section class="start-part" aria-labelledby="start-bench">
      <h2 id="start-bench">Set out</h2>
      {programme.setOut.length === 0 ? (
        <p>Nothing to measure out.</p>
      ) : (
        <p class="soft">{`${done} of ${programme.setOut.length} on the bench. Write the words in quotes on the cups.`}</p>
      )}
      <ul class="start-bench">
        {programme.setOut.map((item) => (
          <li key={item.id}>
            <label class="start-cup">
              <input
                type="checkbox"
                checked={setOut.includes(item.id)}
                onChange={(event) =>
                  change(event.currentTarget.checked ? [...setOut, item.id] : setOut.filter((id) => id !== item.id))
                }
              />
              <span class="start-cup-words">
                <span class="start-cup-name">{cupName(item, potName)}</span>
                <span class="start-cup-amount">{`${showDose(item.amount, units)} of ${item.amount.of}`}</span>
                {item.sum === '' ? null : <span class="start-cup-sum">{item.sum}</span>}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Cups carry the pot's name: two pots' acid stands on one bench. */
export function cupName(item: SetOut, potName: string): string {
  return `“${potName}, ${item.label}”`
}
