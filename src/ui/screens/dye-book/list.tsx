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
import { byDay } from './days.ts'
import { Find } from './find.tsx'
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

export function BookList({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const { lines, more, earlier } = useBook(kitchen)
  const [failed, setFailed] = useState<string | null>(null)
  const [found, setFound] = useState<BookLine[] | null>(null)
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
      <Find kitchen={kitchen} found={found} show={setFound} />
      {byDay(found ?? lines, kitchen.now.peek()).map((day) => (
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
                again={() => sameAgain(kitchen, line.potId).then(setFailed)}
              />
            ))}
          </ul>
        </section>
      ))}
      {more && found === null ? <Pad onPress={earlier}>Earlier</Pad> : null}
      <BookFile kitchen={kitchen} />
    </Page>
  )
}

const statusWords = {
  running: 'on the stove',
  held: 'stopped, still dyeing',
  complete: 'done',
  aborted: 'ended early'
} as const

type LineProps = { kitchen: Kitchen; line: BookLine; again: () => void }

function Line({ kitchen, line, again }: LineProps): preact.JSX.Element {
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
      <Pad label={`${line.colourway}: same again`} onPress={again}>
        Same again
      </Pad>
    </li>
  )
}
