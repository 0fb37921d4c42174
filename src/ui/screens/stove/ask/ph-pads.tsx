// A strip is read in its own steps: a value, between two, or stained.
import { useState } from 'preact/hooks'
import type { PhReading } from '../../../../core/pot/events.ts'
import { Pad } from '../../../parts/pad.tsx'
import type { PhStrip } from '../../../parts/ph-strip.ts'
import type { AskLook } from './ask-panel.tsx'
import { StripGuide } from './strip-guide.tsx'

/** `middle`: the pH that is hoped for. */
type Props = {
  middle: number
  strip: PhStrip
  look: AskLook
  layoutKey: string
  onRead: (reading: PhReading) => void
}

const SHOWN = 9

export function PhPads({ middle, strip, look, layoutKey, onRead }: Props): preact.JSX.Element {
  const { steps, seconds, lot } = strip
  const [between, setBetween] = useState(false)
  const [first, setFirst] = useState(windowAt(steps, nearest(steps, middle) - (SHOWN - 1) / 2))
  const from = windowAt(steps, first)
  const key = `${layoutKey} ${from} ${between}`
  const all = steps.length <= SHOWN
  const shown = steps.slice(from, from + SHOWN).map((ph, i) => ({ ph, next: steps[from + i + 1] }))
  return (
    <div class="ask-ph">
      <StripGuide seconds={seconds} look={look} />
      <div class="ask-grid">
        {shown.map(({ ph, next }) =>
          between && next !== undefined ? (
            <Pad
              key={ph}
              kind="lesser"
              look={look}
              className="ask-reading"
              layoutKey={key}
              onPress={() => onRead({ kind: 'between', low: ph, high: next })}
            >
              {`${ph} – ${next}`}
            </Pad>
          ) : between ? null : (
            <Pad
              key={ph}
              kind="lesser"
              look={look}
              className="ask-reading"
              layoutKey={key}
              onPress={() => onRead({ kind: 'value', ph })}
            >
              {Number.isInteger(ph * 10) ? ph.toFixed(1) : String(ph)}
            </Pad>
          )
        )}
      </div>
      <div class="ask-grid">
        {all ? null : (
          <Pad kind="lesser" look={look} disabled={from === 0} onPress={() => setFirst(windowAt(steps, from - 4))}>
            lower
          </Pad>
        )}
        <Pad kind="lesser" look={look} selected={between} onPress={() => setBetween(!between)}>
          between
        </Pad>
        {all ? null : (
          <Pad
            kind="lesser"
            look={look}
            disabled={from + SHOWN >= steps.length}
            onPress={() => setFirst(windowAt(steps, from + 4))}
          >
            higher
          </Pad>
        )}
      </div>
      <Pad kind="lesser" look={look} layoutKey={layoutKey} onPress={() => onRead({ kind: 'unreadable' })}>
        Stained, can’t read
      </Pad>
      {lot === '' ? null : <p class="strip-lot">{`Strips of lot ${lot}`}</p>}
    </div>
  )
}

function nearest(steps: readonly number[], ph: number): number {
  const off = steps.map((step) => Math.abs(step - ph))
  return off.indexOf(Math.min(...off))
}

/** The first step shown, so that the pads are full where there are steps enough. */
function windowAt(steps: readonly number[], first: number): number {
  return Math.max(0, Math.min(first, steps.length - SHOWN))
}
