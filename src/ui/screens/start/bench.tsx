// What to set out, with the sum that gave it. Each portion of acid is a cup of its own with its name on it, so that a
// forgotten one is seen on the bench.
import { wantsStartLiquor } from '../../../core/pot/cups.ts'
import type { Programme, SetOut } from '../../../core/protocol/model.ts'
import { showDose, type Units } from '../../../core/quantity/index.ts'
import { type CupFilled, lotsOf } from '../../../core/shelf/set-out-lots.ts'

type Props = {
  programme: Programme
  potName: string
  units: Units
  setOut: readonly string[]
  change: (setOut: string[]) => void
}

export function Bench({ programme, potName, units, setOut, change }: Props): preact.JSX.Element {
  const lots = lotsOf(programme)
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
                <CupLots item={item} filled={lots.get(item.id)} units={units} />
                {item.sum === '' ? null : <span class="start-cup-sum">{item.sum}</span>}
              </span>
            </label>
          </li>
        ))}
      </ul>
      {wantsStartLiquor(programme) ? (
        <p>
          Keep a cup of each dyebath from before the yarn goes in: at the end the bath can be judged beside cups of it.
        </p>
      ) : null}
    </section>
  )
}

/** One line for each bottle that the cup is filled from. */
function CupLots({
  item,
  filled,
  units
}: {
  item: SetOut
  filled: CupFilled | undefined
  units: Units
}): preact.JSX.Element | null {
  if (filled === undefined) return null
  const { lots, together } = filled
  return (
    <>
      {together ? <span class="start-cup-lot">Pour together first, for all the cups of it:</span> : null}
      {lots.map(({ bottle, amount }) => {
        const lot = bottle.lot === '' ? bottle.name : `lot ${bottle.lot}`
        const from = bottle.lot === '' || lots.length > 1 ? lot : `${bottle.name}, ${lot}`
        const much = lots.length > 1 ? `${showDose({ value: amount, unit: item.amount.unit }, units)} from ` : 'from '
        return <span key={bottle.itemId} class="start-cup-lot">{`${much}${from}`}</span>
      })}
    </>
  )
}

/** Cups carry the pot's name: two pots' acid stands on one bench. */
export function cupName(item: SetOut, potName: string): string {
  return `“${potName}, ${item.label}”`
}
