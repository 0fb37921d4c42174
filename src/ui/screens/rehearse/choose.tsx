// Which protocols are rehearsed, one or several together.
import { useState } from 'preact/hooks'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { atDefaults } from '../../parts/at-defaults.ts'
import { estimateWords } from '../../parts/estimate-words.ts'
import { TextField } from '../../parts/field.tsx'
import { useKnownProtocols } from '../../parts/known-protocols.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { afterMinMost, rehearsalRoute, rehearsedPotsMost } from '../../parts/rehearsal-route.ts'
import type { RehearsalAnswers } from '../../rehearsing.ts'
import { AnswersRow, SpeedRow } from './pace.tsx'

type Chosen = { protocolId: string; title: string; after: string }

export function Choose({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [known] = useKnownProtocols(kitchen)
  const [chosen, setChosen] = useState<Chosen[]>([])
  const [answers, setAnswers] = useState<RehearsalAnswers>('own')
  const [speed, setSpeed] = useState(60)
  const problems = chosen.map(({ after }) => problemOf(after))
  const ready = chosen.length > 0 && problems.every((problem) => problem === null)
  const change = (nth: number, after: string): void =>
    setChosen(chosen.map((one, at) => (at === nth ? { ...one, after } : one)))
  const begin = (): void => {
    const pots = chosen.map(({ protocolId, after }) => ({ protocolId, afterMin: Number(after) || 0 }))
    kitchen.go(rehearsalRoute({ answers, speed, pots }))
  }
  return (
    <Page title="Rehearse">
      <p>
        A rehearsal runs protocols on a fast clock with no yarn and no heat: what calls when, and where two pots want
        hands at once. Nothing of it enters the Dye book.
      </p>
      <section class="rehearse-chosen" aria-label="To be rehearsed">
        {chosen.map((one, nth) => (
          <div key={nth} class="rehearse-one">
            <strong>{one.title}</strong>
            <TextField
              label="Starts after"
              unit="min"
              kind="numeric"
              value={one.after}
              onInput={(after) => change(nth, after)}
              problem={problems[nth] ?? null}
            />
            <Pad label={`Leave out ${one.title}`} onPress={() => setChosen(chosen.filter((_, at) => at !== nth))}>
              Leave out
            </Pad>
          </div>
        ))}
        <SpeedRow value={speed} onChoose={setSpeed} />
        <AnswersRow value={answers} onChoose={setAnswers} />
      </section>
      <section class="rehearse-known" aria-labelledby="rehearse-known">
        <h2 id="rehearse-known">Add a protocol</h2>
        {chosen.length >= rehearsedPotsMost ? <p>{`No more than ${rehearsedPotsMost} pots.`}</p> : null}
        <ul>
          {(known ?? []).map((stored) => (
            <li key={stored.id}>
              <Known
                stored={stored}
                full={chosen.length >= rehearsedPotsMost}
                add={() => setChosen([...chosen, { protocolId: stored.id, title: stored.protocol.title, after: '0' }])}
              />
            </li>
          ))}
        </ul>
      </section>
      <div class="rehearse-begin">
        <Pad kind="lesser" look="solid" disabled={!ready} onPress={begin}>
          {beginWords(chosen.length)}
        </Pad>
      </div>
    </Page>
  )
}

function Known({ stored, full, add }: { stored: StoredProtocol; full: boolean; add: () => void }): preact.JSX.Element {
  const programme = atDefaults(stored.protocol)
  return (
    <Pad disabled={full || programme === null} onPress={add}>
      <span>{stored.protocol.title}</span>
      <span class="soft">{programme ? estimateWords(programme) : 'Asks for figures that have no default'}</span>
    </Pad>
  )
}

function beginWords(pots: number): string {
  if (pots === 0) return 'Choose a protocol'
  return pots === 1 ? 'Begin with one pot' : `Begin with ${pots} pots`
}

/** Null: nothing is wrong with it. */
function problemOf(after: string): string | null {
  const text = after.trim()
  if (text === '') return null
  if (!/^\d+$/.test(text)) return `“${text}” is not whole minutes. Write a number such as 20.`
  return Number(text) <= afterMinMost ? null : `More than a day. Write at most ${afterMinMost} min.`
}
