import { closingLine } from '../../../core/safety/caution.ts'
import { general, rules } from '../../../core/safety/rules.ts'

/** What this is, what it can't do, and every caution it knows with where it comes from. */
export function About(): preact.JSX.Element {
  return (
    <>
      <section class="settings-part" aria-labelledby="settings-safety">
        <h2 id="settings-safety">Safety</h2>
        <ul class="settings-facts">
          <li>Stay by the heat. If you must leave, heat off first.</li>
          <li>
            A call can fail: the device sleeps, the battery ends, the fan is louder. Set a kitchen timer for heat steps.
          </li>
          <li>Dye tools never return to food.</li>
          <li>{closingLine}</li>
        </ul>
        <details class="settings-more">
          <summary>All cautions and their sources</summary>
          <dl class="settings-cautions">
            {[...rules, ...general].map((caution) => (
              <div key={caution.id}>
                <dt>{caution.title}</dt>
                <dd>{caution.say}</dd>
                <dd class="soft">{caution.source}</dd>
              </div>
            ))}
          </dl>
        </details>
      </section>
      <section class="settings-part" aria-labelledby="settings-about">
        <h2 id="settings-about">About Strandline</h2>
        <p>Strandline runs timed dye protocols at the stove and writes the batch record. It works without a network.</p>
        <p>Temperatures and times to come are estimates. What you read and see goes before what it says.</p>
        <p>Free to use, change and pass on under the MIT licence.</p>
      </section>
    </>
  )
}
