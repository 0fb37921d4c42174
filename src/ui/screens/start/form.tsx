// The form of one pot, from its name to Start.
import { useEffect, useState } from 'preact/hooks'
import type { InputProblem } from '../../../core/protocol/model.ts'
import type { BookLine, Kitchen, StoredProtocol } from '../../kitchen.ts'
import { estimateWords } from '../../parts/estimate-words.ts'
import { FREE_ID } from '../../parts/free-pot.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { useShelfSeen } from '../../parts/shelf-seen.ts'
import { draftOf, keepDraft, type StartDraft } from '../../parts/start-draft.ts'
import { Strip } from '../../parts/strip.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import { BeforeHeat } from './before-heat.tsx'
import { Bench } from './bench.tsx'
import { Bottles } from './bottles.tsx'
import { Cautions } from './cautions.tsx'
import { fieldId, toField } from './field-id.ts'
import { freeLetter, freshDraft } from './fresh-draft.ts'
import { Goods } from './goods.tsx'
import { TheNumbers } from './numbers.tsx'
import { PotName } from './pot-name.tsx'
import { Questions } from './questions.tsx'
import { Shorts } from './shorts.tsx'
import { shownToday } from './shown-today.ts'
import { type Starting, useStarting } from './starting.ts'
import { useWorked } from './use-worked.ts'

type Props = { kitchen: Kitchen; stored: StoredProtocol }

export function StartForm({ kitchen, stored }: Props): preact.JSX.Element {
  const units = unitsOf(kitchen.settings.value)
  const { protocol } = stored
  const free = stored.id === FREE_ID
  const [draft, setDraft] = useState<StartDraft>(
    () => draftOf(stored.id) ?? freshDraft(protocol, kitchen.pots.peek(), units)
  )
  const earlier = useEarlier(kitchen)
  const { things, failed: shelfFailed } = useShelfSeen(kitchen)
  const letter = freeLetter(kitchen.pots.value)
  const potName = draft.colourway.trim() || `Pot ${letter}`
  const { worked, numbers, kept, cautions, shortsOf } = useWorked(kitchen, stored, draft, potName, things)
  const { programme } = worked
  const shelf = things ?? []
  const starting = useStarting(kitchen, stored, { draft, worked, cautions, numbers: kept, things: shelf })
  const change = (change: Partial<StartDraft>): void => {
    const next = { ...draft, ...change }
    setDraft(next)
    keepDraft(stored.id, next)
  }
  const parts = { draft, change, problems: starting.asked ? worked.problems : [], things: shelf }
  return (
    <Page title={protocol.title} actions={<Pad onPress={() => kitchen.go('#/start')}>Another protocol</Pad>}>
      {protocol.demo ? <p class="soft">Invented for the demo.</p> : null}
      {parts.problems.length > 0 ? <ProblemList problems={parts.problems} /> : null}
      <PotName kitchen={kitchen} {...parts} />
      <Goods protocol={protocol} units={units} earlier={earlier} letter={letter} {...parts} />
      {free ? null : (
        <>
          <Questions protocol={protocol} units={units} {...parts} />
          <Bottles protocol={protocol} units={units} {...parts} />
          {shelfFailed === null ? null : <Strip tone="warn">{shelfFailed}</Strip>}
          <Shorts
            kitchen={kitchen}
            stored={stored}
            potName={potName}
            shorts={worked.shorts}
            shortsOf={shortsOf}
            units={units}
            {...parts}
          />
          <TheNumbers kitchen={kitchen} numbers={numbers} inputs={worked.inputs} units={units} {...parts} />
        </>
      )}
      {programme ? (
        <>
          {free ? null : (
            <Bench
              programme={programme}
              potName={potName}
              units={units}
              setOut={draft.setOut}
              change={(setOut) => change({ setOut })}
            />
          )}
          <Cautions cautions={cautions} today={shownToday(kitchen)} />
          {free ? (
            <p>It calls while the heat is on and nothing was told for 15 min, and when you ask it to.</p>
          ) : (
            <p>{`${estimateWords(programme)}.`}</p>
          )}
        </>
      ) : (
        <Strip>The amounts, the cups and the cautions follow once the weights stand above.</Strip>
      )}
      <CalendarChoice kitchen={kitchen} />
      <StartPad kitchen={kitchen} starting={starting} />
    </Page>
  )
}

/** What still rings when this page is dead. */
function CalendarChoice({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const chosen = kitchen.settings.value.calendarAtStart
  return (
    <label class="start-calendar">
      <input
        type="checkbox"
        checked={chosen}
        onChange={(event) => void kitchen.changeSettings({ calendarAtStart: event.currentTarget.checked })}
      />
      <span>
        Also save the coming alerts as a calendar file, for when this device or page ends.{' '}
        <span class="soft">A snapshot: when times move, save it again from the Stove's menu.</span>
      </span>
    </label>
  )
}

function StartPad({ kitchen, starting }: { kitchen: Kitchen; starting: Starting }): preact.JSX.Element {
  const { checks, failed, busy, press, begin, back } = starting
  return (
    <>
      {failed === null || checks !== null ? null : (
        <Strip tone="bad" urgent>
          {failed}
        </Strip>
      )}
      <Pad kind="main" look="solid" disabled={busy} onPress={press}>
        Start
      </Pad>
      {checks === null ? null : (
        <BeforeHeat
          kitchen={kitchen}
          checks={checks}
          busy={busy}
          failed={failed}
          start={() => begin(checks)}
          back={back}
        />
      )}
    </>
  )
}

/** Earlier pots, for a used bath or dyed yarn. */
function useEarlier(kitchen: Kitchen): BookLine[] {
  const [lines, setLines] = useState<BookLine[]>([])
  useEffect(() => {
    let here = true
    kitchen.book(0, kitchen.now.peek() + 1, 20).then((found) => {
      if (here) setLines(found)
    })
    return () => {
      here = false
    }
  }, [kitchen])
  return lines
}

/** All of them at once, each leading to its field. */
function ProblemList({ problems }: { problems: readonly InputProblem[] }): preact.JSX.Element {
  return (
    <div class="start-problems" role="alert">
      <h2>{problems.length === 1 ? 'One thing to put right' : `${problems.length} things to put right`}</h2>
      <ul>
        {problems.map((problem) => {
          const id = fieldId(problem.field)
          const words = `${problem.what} ${problem.instead}`
          return (
            <li key={`${problem.field} ${problem.code}`}>
              {id === null ? (
                words
              ) : (
                <button type="button" onClick={() => toField(id)}>
                  {words}
                </button>
              )}
            </li>
          )
        })}
      </ul>
    </div>
  )
}
