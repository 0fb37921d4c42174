// Today, yesterday, earlier.
import { useEffect, useState } from 'preact/hooks'
import { showMass } from '../../../core/quantity/index.ts'
import type { BookLine, Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { clockOf } from '../../parts/day-name.ts'
import { EmptyState } from '../../parts/empty-state.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import { BackupStrip } from './backup-strip.tsx'
import { BookFile } from './book-file.tsx'
import { Choosing } from './choosing.tsx'
import { byDay } from './days.ts'
import { FindBatches } from './find/index.tsx'
import { dayRoute, recordRoute } from './routes.ts'
import { sameAgain } from './same-again.ts'

/** How many lines are read at a time. */
const PAGE = 40

type Book = { lines: BookLine[] | null; more: boolean; earlier: () => Promise<void> }

/** The newest lines, and more of them when asked for. */
function useBook(kitchen: Kitchen): Book {
  const [lines, setLines] = useState<BookLine[] | null>(null)
  const [more, setMore] = useState(false)
  const live = kitchen.pots.value.map((pot) => pot.potId).join(' ')
  useEffect(() => {
    let here = true
    kitchen.book(0, Number.MAX_SAFE_INTEGER, PAGE).then((found) => {
      if (!here) return
      setLines(found)
      setMore(found.length === PAGE)
    })
    return () => {
      here = false
    }
  }, [kitchen, live])
  const earlier = async (): Promise<void> => {
    const found = await kitchen.book(0, lines?.at(-1)?.startedAtMs ?? 0, PAGE)
    setLines([...(lines ?? []), ...found])
    setMore(found.length === PAGE)
  }
  return { lines, more, earlier }
}

/** `choose`: batches that are chosen already, to be laid beside others. */
export function BookList({ kitchen, choose }: { kitchen: Kitchen; choose?: readonly string[] }): preact.JSX.Element {
  const { lines, more, earlier } = useBook(kitchen)
  const [failed, setFailed] = useState<string | null>(null)
  const [chosen, setChosen] = useState<readonly string[] | null>(choose ?? null)
  const [found, setFound] = useState<BookLine[] | null>(null)
  const [most, setMost] = useState(PAGE)
  if (lines === null) {
    return (
      <Page title="Dye book">
        <p>Opening the book.</p>
      </Page>
    )
  }
  if (lines.length === 0) {
    return (
      <Page title="Dye book">
        <BackupStrip kitchen={kitchen} />
        <NothingYet kitchen={kitchen} />
      </Page>
    )
  }
  return (
    <Page title="Dye book">
      <BackupStrip kitchen={kitchen} />
      {failed === null ? null : (
        <Strip tone="warn" urgent>
          {failed}
        </Strip>
      )}
      <FindBatches
        kitchen={kitchen}
        show={(fitting) => {
          setFound(fitting)
          setMost(PAGE)
        }}
      />
      <Choose kitchen={kitchen} chosen={chosen} choose={setChosen} />
      {byDay(found?.slice(0, most) ?? lines, kitchen.now.peek()).map((day) => (
        <section key={day.name} class="book-day">
          <div class="book-day-head">
            <h2>{day.name}</h2>
            <a href={dayRoute(day.key)} aria-label={`Day sheet, ${day.name}`}>
              Day sheet
            </a>
          </div>
          <ul class="book-lines">
            {day.lines.map((line) => (
              <Line
                key={line.potId}
                kitchen={kitchen}
                line={line}
                chosen={chosen === null ? null : chosen.includes(line.potId)}
                choose={() => setChosen(toggled(chosen ?? [], line.potId))}
                again={() => sameAgain(kitchen, line.potId).then(setFailed)}
              />
            ))}
          </ul>
        </section>
      ))}
      {found === null && more ? <Pad onPress={earlier}>Earlier</Pad> : null}
      {found !== null && found.length > most ? <Pad onPress={() => setMost(most + PAGE)}>Earlier</Pad> : null}
      <BookFile kitchen={kitchen} />
    </Page>
  )
}

function NothingYet({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return (
    <EmptyState
      title="Nothing dyed yet"
      actions={
        <>
          <Pad kind="lesser" look="solid" onPress={() => kitchen.go('#/start')}>
            Start a pot
          </Pad>
          {kitchen.backup ? (
            <Pad kind="lesser" onPress={() => kitchen.go('#/settings/backup')}>
              Restore a backup
            </Pad>
          ) : null}
        </>
      }
    >
      <p>Each pot leaves a record here: what was planned, what was done, what was added and seen.</p>
      <p>From it the same pot can be started again.</p>
    </EmptyState>
  )
}

const statusWords = {
  running: 'on the stove',
  held: 'stopped, still dyeing',
  complete: 'done',
  aborted: 'ended early'
} as const

type ChooseProps = {
  kitchen: Kitchen
  chosen: readonly string[] | null
  choose: (chosen: readonly string[] | null) => void
}

function Choose({ kitchen, chosen, choose }: ChooseProps): preact.JSX.Element {
  if (chosen !== null) return <Choosing kitchen={kitchen} chosen={chosen} close={() => choose(null)} />
  return (
    <div class="book-acts">
      <Pad onPress={() => choose([])}>Choose several to compare</Pad>
    </div>
  )
}

function toggled(chosen: readonly string[], potId: string): string[] {
  return chosen.includes(potId) ? chosen.filter((each) => each !== potId) : [...chosen, potId]
}

/** `chosen` null: nothing is being chosen. */
type LineProps = { kitchen: Kitchen; line: BookLine; chosen: boolean | null; choose: () => void; again: () => void }

function Line({ kitchen, line, chosen, choose, again }: LineProps): preact.JSX.Element {
  const facts = [
    line.protocolTitle,
    showMass(line.goodsMassG, unitsOf(kitchen.settings.value)),
    line.elsewhere ? 'on the stove of another device' : statusWords[line.status],
    line.branched ? 'continued on two devices' : '',
    line.offProtocol ? 'off protocol' : ''
  ].filter(Boolean)
  return (
    <li class="book-line">
      <a href={recordRoute(line.potId)}>
        <span class="book-dot" style={{ background: bathColour(line.colour) }} />
        <span class="book-line-words">
          <strong>{line.colourway}</strong>
          <span class="soft">{[clockOf(line.startedAtMs), ...facts].join(' · ')}</span>
        </span>
      </a>
      {chosen === null ? (
        <Pad label={`${line.colourway}: same again`} onPress={again}>
          Same again
        </Pad>
      ) : (
        <Pad label={`Choose ${line.batchName}`} selected={chosen} onPress={choose}>
          {chosen ? 'Chosen' : 'Choose'}
        </Pad>
      )}
    </li>
  )
}
