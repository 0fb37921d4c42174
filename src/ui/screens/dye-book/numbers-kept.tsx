// What was worked out before the start, as it was shown then: beside what was measured it says how good it was.
import type { KeptNumbers } from '../../../core/protocol/numbers/kept.ts'
import { alkalinityWords, phWords, ratioWords } from '../../../core/protocol/numbers/words.ts'
import { showTemperature, type Units } from '../../../core/quantity/index.ts'

export function NumbersKept({ numbers, units }: { numbers: KeptNumbers; units: Units }): preact.JSX.Element {
  const { ph, boilC, trueRatio, flags } = numbers
  return (
    <section class="book-part" aria-labelledby="book-numbers">
      <h2 id="book-numbers">Estimated before the start</h2>
      <dl class="book-facts">
        {ph.map(({ after, tempC, ...range }) => (
          <div key={after}>
            <dt>{`pH after ${after}`}</dt>
            <dd>{`${phWords(range)} on a spoonful at ${showTemperature(tempC, units)}`}</dd>
          </div>
        ))}
        {trueRatio === null ? null : (
          <div>
            <dt>Liquor, with all that goes in</dt>
            <dd>{ratioWords(trueRatio)}</dd>
          </div>
        )}
        {boilC === null ? null : (
          <div>
            <dt>Water boiled at</dt>
            <dd>{showTemperature(boilC, units, { digits: 1 })}</dd>
          </div>
        )}
      </dl>
      {ph.length === 0 ? null : <p class="soft">{`Estimated without the goods. ${alkalinityWords(numbers)}`}</p>}
      {flags.length === 0 ? null : (
        <ul aria-label="Told before the start">
          {flags.map(({ say }) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
      )}
    </section>
  )
}
