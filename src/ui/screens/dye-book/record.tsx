// One batch record: the strand of what was planned and what was done, then all of it in words.
import { useMemo, useState } from 'preact/hooks'
import type { Entry } from '../../../core/pot/entry.ts'
import type { PotEvent } from '../../../core/pot/events.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { planOf } from '../../../core/record/plan.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { protocolRoute } from '../../parts/known-protocols.ts'
import { LyingStrand } from '../../parts/lying-strand.tsx'
import { onward } from '../../parts/onward.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { keepOpened } from '../../parts/start-draft.ts'
import { recordItems } from '../../parts/strand-items.ts'
import { Strip } from '../../parts/strip.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import { AgainSheet } from './again/index.tsx'
import { chooseRoute } from './compare/routes.ts'
import { CorrectSheet } from './correct.tsx'
import { Curve } from './curve.tsx'
import { Damaged, Unreadable } from './damaged.tsx'
import { Branches, Elsewhere, SetAside, useElsewhere } from './elsewhere.tsx'
import { FilesPart } from './files.tsx'
import { Lineage } from './lineage.tsx'
import { MediaPart } from './media.tsx'
import { NoteSheet } from './note.tsx'
import { Papers } from './papers.tsx'
import { headFacts, statusLine } from './record-words.ts'
import { Results } from './results.tsx'
import { printRoute } from './routes.ts'
import { startAgain } from './same-again.ts'
import { SeriesPart } from './series-part.tsx'
import { SwatchPart } from './swatches.tsx'
import { Amounts, Lines } from './tables.tsx'
import { useRecord } from './use-record.ts'

export function RecordPage({ kitchen, potId }: { kitchen: Kitchen; potId: string }): preact.JSX.Element {
  const [round, setRound] = useState(0)
  const [shown, show] = useState(0)
  const { read, branches, entries, record, units } = useRecord(kitchen, potId, { round, branch: shown })
  const live = kitchen.pots.value.some((pot) => pot.potId === potId)
  const elsewhere = useElsewhere(kitchen, potId, record, live)
  const back = <Pad onPress={() => kitchen.go('#/dye-book')}>All records</Pad>
  if (read === null) {
    return (
      <Page title="Dye book" actions={back}>
        <p>Opening the record.</p>
      </Page>
    )
  }
  if (record === null) {
    return (
      <Page title="Dye book" actions={back}>
        <Unreadable entries={read.entries} damaged={read.damaged} units={units} />
      </Page>
    )
  }
  return (
    <div class="book-wide">
      <Page title={record.identity.colourway} actions={back}>
        <Head record={record} units={units} elsewhere={elsewhere} />
        <Lineage kitchen={kitchen} record={record} />
        <Damaged damaged={read.damaged} />
        <SetAside kitchen={kitchen} potId={potId} record={record} units={units} />
        <Branches branches={branches} shown={shown} show={show} />
        {elsewhere ? (
          <Elsewhere kitchen={kitchen} potId={potId} />
        ) : shown > 0 ? null : (
          <Acts kitchen={kitchen} potId={potId} record={record} entries={entries} changed={() => setRound(round + 1)} />
        )}
        <Picture record={record} />
        <Curve record={record} nowMs={kitchen.now.peek()} units={units} />
        <Results
          kitchen={kitchen}
          potId={potId}
          record={record}
          entries={entries}
          changed={() => setRound(round + 1)}
        />
        <MediaPart kitchen={kitchen} potId={potId} record={record} changed={() => setRound(round + 1)} />
        <SwatchPart kitchen={kitchen} potId={potId} />
        <SeriesPart kitchen={kitchen} record={record} />
        <div class="book-columns">
          <Amounts record={record} units={units} />
          <div class="book-column">
            <Lines record={record} />
          </div>
        </div>
        <Papers kitchen={kitchen} record={record} units={units} />
        <FilesPart kitchen={kitchen} record={record} entries={read.entries} />
        <p class="soft">Kept in the manner of a batch record. It certifies nothing.</p>
      </Page>
    </div>
  )
}

type HeadProps = { record: BatchRecord; units: Units; elsewhere: boolean }

function Head({ record, units, elsewhere }: HeadProps): preact.JSX.Element {
  return (
    <div class="book-head" style={{ '--bath': bathColour(record.identity.colour) }}>
      <p>{headFacts(record, units).join(' · ')}</p>
      <p>
        <strong>{elsewhere ? 'On the stove of another device when it was saved.' : statusLine(record)}</strong>
      </p>
    </div>
  )
}

type ActsProps = {
  kitchen: Kitchen
  potId: string
  record: BatchRecord
  entries: readonly Entry<PotEvent>[]
  changed: () => void
}

function Acts({ kitchen, potId, record, entries, changed }: ActsProps): preact.JSX.Element {
  const [open, setOpen] = useState<'note' | 'correct' | 'again' | null>(null)
  const [failed, setFailed] = useState<string | null>(null)
  const [making, setMaking] = useState(false)
  const closed = (acted: boolean): void => {
    setOpen(null)
    if (acted) changed()
  }
  const make = async (): Promise<void> => {
    setMaking(true)
    const go = onward(kitchen)
    const made = await kitchen.makeProtocol(potId)
    setMaking(false)
    if (!made.ok) {
      setFailed(made.say)
      return
    }
    keepOpened(made.stored)
    go(protocolRoute(made.stored.id))
  }
  return (
    <>
      <div class="book-acts">
        <Pad look="solid" onPress={() => startAgain(kitchen, record).then(setFailed)}>
          Same again
        </Pad>
        <Pad onPress={() => setOpen('again')}>Again, but…</Pad>
        <Pad onPress={() => kitchen.go(chooseRoute(potId))}>Compare</Pad>
        <Pad onPress={() => kitchen.go(printRoute(potId))}>Print</Pad>
        <Pad onPress={() => setOpen('note')}>Note</Pad>
        <Pad onPress={() => setOpen('correct')}>Correct</Pad>
        <Pad disabled={making} onPress={() => void make()}>
          Make a protocol of this
        </Pad>
      </div>
      {failed === null ? null : (
        <Strip tone="warn" urgent>
          {failed}
        </Strip>
      )}
      {open === 'note' ? <NoteSheet kitchen={kitchen} potId={potId} times={record.identity} close={closed} /> : null}
      {open === 'again' ? (
        <AgainSheet
          kitchen={kitchen}
          record={record}
          units={unitsOf(kitchen.settings.value)}
          close={() => closed(false)}
        />
      ) : null}
      {open === 'correct' ? (
        <CorrectSheet kitchen={kitchen} potId={potId} record={record} entries={entries} close={closed} />
      ) : null}
    </>
  )
}

function Picture({ record }: { record: BatchRecord }): preact.JSX.Element {
  const items = useMemo(() => recordItems(record, planOf(record.programme, record.identity.startedAtMs)), [record])
  const late = record.steps.filter((step) => step.lateMs > 0)
  return (
    <section class="book-part" aria-labelledby="book-picture">
      <h2 id="book-picture">Planned and done</h2>
      <LyingStrand items={items} title="Planned above, done below, in time; the same in words further down." />
      {late.length === 0 ? (
        <p>Nothing came late.</p>
      ) : (
        <ul class="book-late">
          {late.map((step) => (
            <li key={`${step.path} ${step.startMs}`}>{step.sentence}</li>
          ))}
        </ul>
      )}
    </section>
  )
}
