// All cautions of a programme, once, before it starts: in full what was not shown today, as one line what was.
import { type Caution, closingLine, inFull } from '../../../core/safety/caution.ts'
import { CautionBox } from '../../parts/caution-box.tsx'

export function Cautions({
  cautions,
  today
}: {
  cautions: readonly Caution[]
  today: ReadonlySet<string>
}): preact.JSX.Element {
  const full = cautions.filter((caution) => inFull(caution, today))
  const again = cautions.filter((caution) => !inFull(caution, today))
  return (
    <section class="start-part" aria-labelledby="start-cautions">
      <h2 id="start-cautions">Mind</h2>
      {full.map((caution) => (
        <CautionBox key={caution.id} title={caution.title} say={caution.say} />
      ))}
      {again.length > 0 ? (
        <>
          <h3>Shown today already</h3>
          <ul class="start-again">
            {again.map((caution) => (
              <li key={caution.id}>{caution.short}</li>
            ))}
          </ul>
        </>
      ) : null}
      <details class="start-sources">
        <summary>Where these come from</summary>
        <dl>
          {cautions.map((caution) => (
            <div key={caution.id}>
              <dt>{caution.title}</dt>
              <dd>{caution.source}</dd>
            </div>
          ))}
        </dl>
      </details>
      <p>{closingLine}</p>
    </section>
  )
}
