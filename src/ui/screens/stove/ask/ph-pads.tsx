// A strip is read in its own steps: a value, between two, or stained.
import { useState } from 'preact/hooks'
import type { PhReading } from '../../../../core/pot/events.ts'
import { Pad } from '../../../parts/pad.tsx'
import type { AskLook } from './ask-panel.tsx'

type Props = { middle: number; look: AskLook; layoutKey: string; onRead: (reading: PhReading) => void }

export function PhPads({ middle, look, layoutKey, onRead }: Props): preact.JSX.Element {
  const [between, setBetween] = useState(false)
  const [from, setFrom] = useState(Math.round(Math.min(9.5, Math.max(2, middle)) * 2) / 2 - 2)
  const values = Array.from({ length: 9 }, (_, i) => from + i * 0.5)
  const key = `${layoutKey} ${from}`
  const read = (ph: number): void =>
    onRead(between ? { kind: 'between', low: ph, high: ph + 0.5 } : { kind: 'value', ph })
  return (
    <div class="ask-ph">
      <div class="ask-grid">
        {values.map((ph) => (
          <Pad key={ph} kind="lesser" look={look} className="ask-reading" layoutKey={key} onPress={() => read(ph)}>
            {between ? `${ph} – ${ph + 0.5}` : ph.toFixed(1)}
          </Pad>
        ))}
        <Pad kind="lesser" look={look} onPress={() => setFrom(Math.max(0, from - 2))}>
          lower
        </Pad>
        <Pad kind="lesser" look={look} selected={between} onPress={() => setBetween(!between)}>
          between
        </Pad>
        <Pad kind="lesser" look={look} onPress={() => setFrom(Math.min(9.5, from + 2))}>
          higher
        </Pad>
      </div>
      <Pad kind="lesser" look={look} layoutKey={layoutKey} onPress={() => onRead({ kind: 'unreadable' })}>
        Stained, can’t read
      </Pad>
    </div>
  )
}
