// What is printed: a record, tags, skein cards, a day sheet. Shown as it will be, then handed to the browser's printer.
import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'
import type { Units } from '../../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import type { Judgement } from '../../../../core/record/swatch.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { Page } from '../../../parts/page.tsx'
import { Strip } from '../../../parts/strip.tsx'
import { Unreadable } from '../damaged.tsx'
import { dayKey } from '../days.ts'
import { bookRoute, recordRoute } from '../routes.ts'
import { useJudgements } from '../use-judgements.ts'
import { useRecord } from '../use-record.ts'
import { Cards } from './cards.tsx'
import { DayPaper } from './day-paper.tsx'
import { type PaperSize, papers } from './paper.tsx'
import { RecordPaper } from './record-paper.tsx'
import { TagPages, TagSheets } from './tags.tsx'

const kinds = [
  { value: 'record', label: 'Record' },
  { value: 'tag', label: 'Tag' },
  { value: 'tags', label: 'Sheet of tags' },
  { value: 'card', label: 'Skein card' },
  { value: 'day', label: 'Day sheet' }
] as const
type Kind = (typeof kinds)[number]['value']

export function PrintPage({ kitchen, potId }: { kitchen: Kitchen; potId: string }): preact.JSX.Element {
  const { read, record, units } = useRecord(kitchen, potId)
  const skein = useJudgements(kitchen, [potId])
  const [kind, setKind] = useState<Kind>('record')
  const [opening, setOpening] = useState(false)
  const back = <Pad onPress={() => kitchen.go(recordRoute(potId))}>Back to the record</Pad>
  useFoot(record === null ? '' : footOf(kind, record))
  if (read === null || record === null || skein === null) {
    return (
      <Page title="Print" actions={back}>
        {read === null || record !== null ? (
          <p>Opening the record.</p>
        ) : (
          <Unreadable entries={read.entries} damaged={read.damaged} units={units} />
        )}
      </Page>
    )
  }
  return (
    <Page title={`Print ${record.identity.colourway}`} actions={back}>
      <Choices kitchen={kitchen} sized={kind !== 'tag'} opening={opening}>
        <ChoiceRow legend="What" choices={kinds} value={kind} onChoose={setKind} />
      </Choices>
      {skein.problem === null ? null : <Strip tone="warn">{`${skein.problem} The paper lacks them.`}</Strip>}
      <Chosen
        kitchen={kitchen}
        kind={kind}
        record={record}
        judgements={skein.judgements}
        units={units}
        opening={setOpening}
      />
    </Page>
  )
}

function footOf(kind: Kind, { identity }: BatchRecord): string {
  if (kind === 'day') return dayFoot(dayKey(identity.startedAtMs))
  return `${identity.colourway} · batch ${identity.batchName}`
}

const dayFoot = (day: string): string => `Day sheet, ${day}`

/** `judgements`: on its skein, the latest first. */
type ChosenProps = {
  kitchen: Kitchen
  kind: Kind
  record: BatchRecord
  judgements: readonly Judgement[]
  units: Units
  opening: (still: boolean) => void
}

function Chosen({ kitchen, kind, record, judgements, units, opening }: ChosenProps): preact.JSX.Element {
  const size = kitchen.settings.value.paper
  switch (kind) {
    case 'record':
      return (
        <RecordPaper
          kitchen={kitchen}
          record={record}
          judgements={judgements}
          units={units}
          size={size}
          opening={opening}
        />
      )
    case 'tag':
      return <TagPages record={record} verdict={judgements[0]} units={units} />
    case 'tags':
      return <TagSheets record={record} verdict={judgements[0]} units={units} size={size} />
    case 'card':
      return <Cards kitchen={kitchen} record={record} units={units} size={size} />
    case 'day':
      return <DayPaper kitchen={kitchen} day={dayKey(record.identity.startedAtMs)} units={units} size={size} />
  }
}

export function DayPage({ kitchen, day }: { kitchen: Kitchen; day: string }): preact.JSX.Element {
  const { paper, temperature, volume, mass } = kitchen.settings.value
  useFoot(dayFoot(day))
  return (
    <Page title="Print a day sheet" actions={<Pad onPress={() => kitchen.go(bookRoute)}>All records</Pad>}>
      <Choices kitchen={kitchen} sized />
      <DayPaper kitchen={kitchen} day={day} units={{ temperature, volume, mass }} size={paper} />
    </Page>
  )
}

type ChoicesProps = { kitchen: Kitchen; sized: boolean; opening?: boolean; children?: ComponentChildren }

const sizes = (['a4', 'letter'] as const).map((value) => ({ value, label: papers[value].label }))

function Choices({ kitchen, sized, opening = false, children }: ChoicesProps): preact.JSX.Element {
  const [failed, setFailed] = useState<string | null>(null)
  const choose = async (paper: PaperSize): Promise<void> => {
    const sent = await kitchen.changeSettings({ paper })
    setFailed(sent.ok ? null : sent.say)
  }
  const print = (): void => {
    if (typeof window.print === 'function') window.print()
    else setFailed('This browser can’t print from here. Use the print command of its own menu, or another browser.')
  }
  return (
    <div class="print-choices">
      {children}
      {sized ? (
        <ChoiceRow
          legend="Paper"
          choices={sizes}
          value={kitchen.settings.value.paper}
          onChoose={(paper) => void choose(paper)}
        />
      ) : null}
      {failed === null ? null : (
        <Strip tone="warn" urgent>
          {failed}
        </Strip>
      )}
      <Pad kind="lesser" look="solid" disabled={opening} onPress={print}>
        Print
      </Pad>
      {opening ? <p role="status">Opening the photos.</p> : null}
    </div>
  )
}

/** What stands at the foot of each sheet. A page rule takes its words from the root, as a string of CSS. */
function useFoot(words: string): void {
  useLayoutEffect(() => {
    const root = document.documentElement
    // A line end would end the string; a backslash or a quote would begin or end something else.
    const quoted = words.replace(/[\n\r\f]/g, ' ').replace(/["\\]/g, '\\$&')
    root.style.setProperty('--print-foot', `"${[...quoted].slice(0, 100).join('')}"`)
    return () => {
      root.style.removeProperty('--print-foot')
    }
  }, [words])
}
