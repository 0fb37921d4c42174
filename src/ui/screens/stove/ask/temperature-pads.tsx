// A reading within 3 °C (6 °F) of the expected one is one pad; the window moves in fives for the rest.
import { useState } from 'preact/hooks'
import { Pad } from '../../../parts/pad.tsx'
import { movedC, readingsAround } from '../expected.ts'
import type { AskLook } from './ask-panel.tsx'

type Props = {
  expectedC: number
  unit: 'C' | 'F'
  look: AskLook
  layoutKey: string
  onRead: (tempC: number) => void
}

export function TemperaturePads({ expectedC, unit, look, layoutKey, onRead }: Props): preact.JSX.Element {
  const [middleC, setMiddleC] = useState(expectedC)
  const readings = readingsAround(middleC, unit)
  const same = readings[3] as (typeof readings)[number]
  const beside = readings.filter((r) => r !== same)
  const key = `${layoutKey} ${middleC}`
  return (
    <div class="ask-temperature">
      <Pad kind="main" look={look} className="ask-same" layoutKey={layoutKey} onPress={() => onRead(same.tempC)}>
        <span class="ask-figure">
          {same.say} °{unit}
        </span>
      </Pad>
      <div class="ask-grid">
        {beside.map((reading) => (
          <Pad
            key={reading.say}
            kind="lesser"
            look={look}
            className="ask-reading"
            layoutKey={key}
            label={`${reading.say} °${unit}`}
            onPress={() => onRead(reading.tempC)}
          >
            {reading.say}
          </Pad>
        ))}
        <Pad kind="lesser" look={look} label="All 5 lower" onPress={() => setMiddleC(movedC(middleC, -5, unit))}>
          −5
        </Pad>
        <Pad kind="lesser" look={look} label="Back to the expected one" onPress={() => setMiddleC(expectedC)}>
          {expectedC === middleC ? (unit === 'C' ? '±3' : '±6') : 'back'}
        </Pad>
        <Pad kind="lesser" look={look} label="All 5 higher" onPress={() => setMiddleC(movedC(middleC, 5, unit))}>
          +5
        </Pad>
      </div>
    </div>
  )
}
