// The dyer's pH strips, told once: their steps, the seconds of their maker, their lot.
import { useState } from 'preact/hooks'
import { TextField } from './field.tsx'
import type { PhStrip } from './ph-strip.ts'
import { readSteps, stepsSay } from './strip-steps.ts'

type Props = { strip: PhStrip; onChange: (strip: PhStrip) => void }

const SECONDS_MOST = 600

/** Each field is kept when it is left, where it can be read; what can't stays, with what would be right. */
export function StripSetUp({ strip, onChange }: Props): preact.JSX.Element {
  const [steps, setSteps] = useState(stepsSay(strip.steps))
  const [seconds, setSeconds] = useState(strip.seconds === 0 ? '' : String(strip.seconds))
  const [lot, setLot] = useState(strip.lot)
  const read = readSteps(steps)
  const wait = secondsOf(seconds)
  const keep = (): void => {
    onChange({
      steps: read.ok ? read.steps : strip.steps,
      seconds: wait ?? strip.seconds,
      lot: lot.trim()
    })
  }
  return (
    <div class="strip-set-up" onFocusOut={keep}>
      <TextField
        label="Steps of the strips"
        hint="As on the box: 4, 4.5, 5 or 2 to 9 by 0.5."
        problem={read.ok ? null : read.say}
        value={steps}
        onInput={setSteps}
      />
      <TextField
        label="Read after, seconds"
        hint="What the maker says. Empty: not counted."
        problem={wait === null ? `Write 1 to ${SECONDS_MOST} seconds, for example 15.` : null}
        kind="numeric"
        value={seconds}
        onInput={setSeconds}
      />
      <TextField
        label="Lot of the strips"
        hint="From the box. It is kept with each reading."
        value={lot}
        onInput={setLot}
      />
    </div>
  )
}

/** 0 where nothing is written; null: no such time. */
function secondsOf(text: string): number | null {
  if (text.trim() === '') return 0
  const seconds = Number(text)
  return Number.isInteger(seconds) && seconds >= 1 && seconds <= SECONDS_MOST ? seconds : null
}
