// Readings typed from an instrument, judged in the same way.
import { useMemo } from 'preact/hooks'
import { type White, whites } from '../../../core/colour/index.ts'
import { type SeriesTab, tabSay } from '../../../core/record/series.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../parts/field.tsx'
import type { Act } from './act.ts'
import { Answers } from './answers.tsx'
import { judged, thingsRead } from './judged.ts'
import { KeepPad } from './keep-pad.tsx'
import { tabsThere, withSeries } from './series.ts'
import { SeriesDyed } from './series-dyed.tsx'
import { SeriesField } from './series-field.tsx'
import { givenOf, singlesOf, type Typed } from './typed.ts'
import { Verdict } from './verdict.tsx'

export function ByInstrument({ kitchen, swatches, draft, kept }: Act): preact.JSX.Element {
  const { typed, dry, fibres, batchId, series: dyed } = draft.value
  const { given, problems: own } = useMemo(() => givenOf(typed), [typed])
  const tabs = dyed === null ? [] : tabsThere(dyed)
  const problems = { ...own, series: own.series ?? linesProblem(tabs, given.series.length) }
  const sound = Object.values(problems).every((problem) => problem === null)
  const whole = sound && given.positions.length > 0
  const found = useMemo(
    () => (whole && dry !== null && fibres !== null ? judged(given, { dry, fibres }) : null),
    [whole, given, dry, fibres]
  )
  return (
    <>
      <SeriesField kitchen={kitchen} draft={draft} />
      <Figures
        typed={typed}
        problems={problems}
        tabs={tabs}
        change={(part) => (draft.value = { ...draft.value, typed: { ...typed, ...part } })}
      />
      <Answers kitchen={kitchen} draft={draft} />
      {found === null || dry === null || fibres === null ? (
        <p>
          {whole
            ? 'Answer both questions, and the verdict is here.'
            : 'Type the readings of the skein, and of its series.'}
        </p>
      ) : (
        <>
          <Verdict found={found} />
          <SeriesDyed kitchen={kitchen} draft={draft} read={found.series} />
          <KeepPad
            kitchen={kitchen}
            swatches={swatches}
            batchId={batchId}
            of={found}
            series={dyed}
            events={() => {
              const { undyed, series, positions } = given
              const readings = thingsRead(undyed ? [undyed] : [], series, positions)
              const by = { by: 'instrument', white: typed.white, photos: [] as string[] } as const
              return [
                {
                  type: 'SwatchJudged',
                  batchId,
                  ...by,
                  ...withSeries(dyed),
                  dry,
                  fibres,
                  readings,
                  repeats: singlesOf(typed),
                  verdict: found.verdict
                }
              ]
            }}
            kept={kept}
          />
        </>
      )}
    </>
  )
}

/** Lines that are not as many as the tabs could be any of them. */
function linesProblem(tabs: readonly SeriesTab[], lines: number): string | null {
  if (tabs.length === 0 || lines === 0 || lines === tabs.length) return null
  return `${lines === 1 ? 'One line' : `${lines} lines`} for ${tabs.length} tabs. Type one for each, or press the tabs above that were not read.`
}

type FiguresProps = {
  typed: Typed
  problems: ReturnType<typeof givenOf>['problems']
  /** Of the batch that dyed the series, where one is told. */
  tabs: readonly SeriesTab[]
  change: (part: Partial<Typed>) => void
}

function Figures({ typed, problems, tabs, change }: FiguresProps): preact.JSX.Element {
  const { kind, white } = typed
  const one = kind === 'lab' ? 'L* a* b*' : 'reflectance in %, from 400 nm every 10 nm'
  return (
    <section class="swatches-part" aria-label="Readings">
      <ChoiceRow
        legend="What it reads"
        choices={[
          { value: 'lab', label: 'L*a*b*' },
          { value: 'reflectance', label: 'Reflectance' }
        ]}
        value={kind}
        onChoose={(value) => change({ kind: value })}
      />
      <SelectField
        label="Light and observer"
        hint="As the instrument is set; all readings alike."
        value={white}
        options={whites.map((value) => ({ value, label: `${value}°` }))}
        onChange={(value) => change({ white: value as White })}
      />
      <p class="soft">{`A line for each thing: ${one}. Read each several times, laid anew, and part the readings by semicolons: “42.1 30.2 11.0; 42.4 30.0 11.2”.`}</p>
      <TextField
        label="Undyed yarn"
        lines={1}
        value={typed.undyed}
        problem={problems.undyed}
        onInput={(undyed) => change({ undyed })}
      />
      <TextField
        label="Dilution series"
        hint={tabs.length === 0 ? 'The deepest first.' : `In this order: ${tabs.map(tabSay).join(', ')}.`}
        lines={5}
        value={typed.series}
        problem={problems.series}
        onInput={(series) => change({ series })}
      />
      <TextField
        label="Skein"
        hint="From one end to the other, at equal steps."
        lines={8}
        value={typed.skein}
        problem={problems.skein}
        onInput={(skein) => change({ skein })}
      />
      <TextField
        label="Of these, above the liquor (at the end)"
        kind="numeric"
        value={typed.wicking}
        problem={problems.wicking}
        onInput={(wicking) => change({ wicking })}
      />
    </section>
  )
}
