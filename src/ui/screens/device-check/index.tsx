// Tried on the very device: locked for a while, does it still call in time?
import { useState } from 'preact/hooks'
import { showDuration } from '../../../core/quantity/show-duration.ts'
import type { DeviceCheck, Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import './style.css'

const lengths = [15, 60, 180]
/** Later than this and a dyer would have missed the moment. */
const IN_TIME_MS = 5_000

export function DeviceCheckScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [minutes, setMinutes] = useState(lengths[0] as number)
  const check = kitchen.deviceCheck.value
  const going = check !== null && check.endedAtMs === null
  return (
    <Page title="Device check">
      <p>
        No web page can promise that a locked phone calls in time: it depends on the device and its browser. Try yours,
        with no pot on, before you trust it.
      </p>
      {going ? (
        <Going kitchen={kitchen} check={check} />
      ) : (
        <>
          <ol class="check-steps">
            <li>Put the app on the home screen and open it from there. Charger in, sound up.</li>
            <li>Choose how long, and press Begin.</li>
            <li>Lock the device with its own button, and do not touch it.</li>
            <li>When the time is over unlock it, come back here and read the result.</li>
          </ol>
          <ChoiceRow
            legend="Locked for"
            choices={lengths.map((value) => ({ value, label: `${value} min` }))}
            value={minutes}
            onChoose={setMinutes}
          />
          <Pad kind="main" look="solid" onPress={() => kitchen.beginDeviceCheck(minutes)}>
            Begin
          </Pad>
        </>
      )}
      {check !== null && !going ? <Result check={check} /> : null}
    </Page>
  )
}

export default DeviceCheckScreen

function Going({ kitchen, check }: { kitchen: Kitchen; check: DeviceCheck }): preact.JSX.Element {
  const leftMs = check.beganAtMs + check.minutes * 60_000 - kitchen.now.value
  return (
    <section class="check-going">
      <p role="status">Counting. Lock the device now. {Math.max(1, Math.ceil(leftMs / 60_000))} min to go.</p>
      <Pad kind="lesser" onPress={() => kitchen.stopDeviceCheck()}>
        Stop the check
      </Pad>
    </section>
  )
}

function Result({ check }: { check: DeviceCheck }): preact.JSX.Element {
  const { beganAtMs, endedAtMs, longestMs, lateTimes, lateMs } = check
  const ranMs = Math.max(0, (endedAtMs ?? beganAtMs) - beganAtMs)
  return (
    <section class="check-result" aria-labelledby="check-result">
      <h2 id="check-result">Result of {new Date(beganAtMs).toLocaleString(undefined, when)}</h2>
      <p class="check-verdict">{verdictSay(check)}</p>
      <dl class="check-facts">
        <dt>Tried for</dt>
        <dd>{showDuration(ranMs)}</dd>
        <dt>Longest silence</dt>
        <dd>{showDuration(longestMs)}</dd>
        <dt>Silences over 2 s</dt>
        <dd>{lateTimes === 0 ? 'none' : `${lateTimes}, ${showDuration(lateMs)} in all`}</dd>
      </dl>
      <p class="soft">
        One try on one device on one day. A low battery, another app or an update can change it: heat steps want a
        kitchen timer as well.
      </p>
    </section>
  )
}

const when = { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' } as const

/** What the figures mean at the stove, in a line. */
export function verdictSay({ longestMs, ended, endedAtMs, beganAtMs, minutes }: DeviceCheck): string {
  if (ended) return 'The page was ended while it was locked. Do not lock this device with a pot on.'
  const whole = endedAtMs !== null && endedAtMs - beganAtMs >= minutes * 60_000
  if (longestMs > IN_TIME_MS) {
    return `It slept for up to ${showDuration(longestMs)}. Do not lock this device with a pot on: keep the screen on.`
  }
  const inTime = `It was never silent for more than ${showDuration(Math.max(1_000, longestMs))}`
  return whole
    ? `${inTime}: calls came in time while it was locked.`
    : `${inTime}, but the check was stopped before its time. Try again to the end.`
}
