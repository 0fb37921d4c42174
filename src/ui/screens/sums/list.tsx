// The sums by what a dyer is doing, with a field to find one.
import { useState } from 'preact/hooks'
import { TextField } from '../../parts/field.tsx'
import { Page } from '../../parts/page.tsx'
import { groups } from './sum.ts'
import { found } from './sums.ts'

export function List({ unknown }: { unknown?: string }): preact.JSX.Element {
  const [looked, setLooked] = useState('')
  const here = found(looked)
  return (
    <div class="sums-wide">
      <Page
        title="Bench sums"
        actions={
          <a class="sum-back" href="#/shelf">
            Shelf
          </a>
        }
      >
        {unknown ? <p role="alert">No sum is called “{unknown}”. These there are:</p> : null}
        <TextField label="Find" hint="A word is enough: regain, vinegar, boil." value={looked} onInput={setLooked} />
        <p role="status" class="unseen">
          {looked === '' ? '' : here.length === 1 ? '1 sum' : `${here.length} sums`}
        </p>
        {here.length === 0 ? (
          <p>No sum answers to “{looked}”. Try another word, or clear the field to see all.</p>
        ) : null}
        {groups.map((group) => {
          const ofGroup = here.filter((each) => each.group === group)
          return ofGroup.length === 0 ? null : (
            <section key={group} aria-labelledby={`sums-${group}`}>
              <h2 id={`sums-${group}`}>{group}</h2>
              <ul class="sums-list">
                {ofGroup.map(({ id, title, ask }) => (
                  <li key={id}>
                    <a href={`#/shelf/sums/${id}`}>
                      <span class="sums-title">{title}</span>
                      <span class="sums-ask">{ask}</span>
                    </a>
                  </li>
                ))}
              </ul>
            </section>
          )
        })}
      </Page>
    </div>
  )
}
