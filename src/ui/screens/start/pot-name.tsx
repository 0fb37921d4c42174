// What the pot is called, which colour its bath has on the screen, and where it stands.

import { useEffect } from 'preact/hooks'
import { bathSwatches } from '../../../core/colour/bath-swatches.ts'
import type { InputProblem } from '../../../core/protocol/model.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import { Strip } from '../../parts/strip.tsx'
import type { OnShelf } from '../../shelf.ts'
import { burners, freeLetter, otherBurner } from './fresh-draft.ts'
import { problemAt } from './given.ts'
import { burnerOf, clashOf, namesake } from './identity.ts'
import { standing } from './uses.ts'

type Props = {
  kitchen: Kitchen
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  problems: readonly InputProblem[]
  things: readonly OnShelf[]
}

export function PotName({ kitchen, draft, change, problems, things }: Props): preact.JSX.Element {
  const letter = freeLetter(kitchen.pots.value)
  const name = (colourway: string): void => {
    const named = bathSwatches.find((swatch) => swatch.name.toLowerCase() === colourway.trim().toLowerCase())
    change(named && !draft.colourChosen ? { colourway, colour: named.colour } : { colourway })
  }
  return (
    <section class="start-part" aria-labelledby="start-pot">
      <h2 id="start-pot">Pot</h2>
      <TextField
        label="Colourway"
        hint={`The pot is called by it. Left empty, it is pot ${letter}.`}
        value={draft.colourway}
        onInput={name}
        id="start-colourway"
        problem={problemAt(problems, 'colourway')}
      />
      {namesake(kitchen, draft.colourway) ? (
        <Strip tone="warn">{`A pot called ${draft.colourway.trim()} is on the stove already. Give this one another name.`}</Strip>
      ) : null}
      <BathColour colour={draft.colour} choose={(colour) => change({ colour, colourChosen: true })} />
      <Burner kitchen={kitchen} draft={draft} change={change} problems={problems} things={things} />
    </section>
  )
}

function BathColour({ colour, choose }: { colour: string; choose: (colour: string) => void }): preact.JSX.Element {
  const own = bathSwatches.every((swatch) => swatch.colour !== colour)
  return (
    <fieldset class="start-colours">
      <legend>Colour of the bath on the screen</legend>
      <div class="start-swatches">
        {bathSwatches.map((swatch) => (
          <button
            key={swatch.name}
            type="button"
            class="start-swatch"
            aria-pressed={swatch.colour === colour}
            onClick={() => choose(swatch.colour)}
          >
            <span class="start-dot" style={{ background: swatch.colour }} />
            {swatch.name}
          </button>
        ))}
        <label class="start-swatch" data-chosen={own ? '' : undefined}>
          <input type="color" value={colour} onInput={(event) => choose(event.currentTarget.value)} />
          Own
        </label>
      </div>
    </fieldset>
  )
}

function Burner({ kitchen, draft, change, problems, things }: Props): preact.JSX.Element {
  const clash = clashOf(kitchen, burnerOf(draft))
  // A kitchen whose burners stand on the shelf has those and no others.
  const own = standing(things, 'burner').map(({ item }) => item.thing.name)
  useEffect(() => {
    // Nobody chose the place that was presumed.
    const presumed = burners.some((one) => one === draft.burner) && !own.includes(draft.burner) && !draft.earlier
    const free = own.find((one) => clashOf(kitchen, one) === null)
    if (presumed && free !== undefined) change({ burner: free })
  }, [own.join()])
  const names = new Set<string>([...(own.length > 0 ? own : burners), draft.burner, otherBurner])
  const choices = [...names].map((value) => ({ value, label: value }))
  return (
    <div class="start-burner">
      <ChoiceRow legend="Burner" choices={choices} value={draft.burner} onChoose={(burner) => change({ burner })} />
      {draft.burner === otherBurner ? (
        <TextField
          label="Which"
          hint="For example: camping ring, oven, bench."
          value={draft.otherBurner}
          onInput={(other) => change({ otherBurner: other })}
          id="start-other-burner"
          problem={problemAt(problems, 'burner')}
        />
      ) : null}
      {clash ? (
        <Strip tone="warn">{`${clash} stands there. Two pots on one burner: look which is meant.`}</Strip>
      ) : null}
    </div>
  )
}
