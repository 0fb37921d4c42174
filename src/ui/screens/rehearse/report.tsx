// What a rehearsal showed: how long, how late, and where two pots wanted the same hands.
import { SOUNDS_AN_HOUR_MOST } from '../../../core/pot/alarm-budget.ts'
import { showDuration } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { draftOfId, type PlannedRehearsal } from '../../parts/rehearsal-route.ts'
import type { RehearsalReport } from '../../rehearsing.ts'
import { clock } from './bar.tsx'

const WAIT_LEAST_MS = 60_000
const WAITS_SHOWN = 8

type Props = { kitchen: Kitchen; report: RehearsalReport; planned: PlannedRehearsal; again: () => void }

export function Report({ kitchen, report, planned, again }: Props): preact.JSX.Element {
  const [only, more] = planned.pots
  const draftId = only && draftOfId(only.protocolId)
  return (
    <Page
      title="The rehearsal is over"
      actions={
        <>
          <Pad onPress={again}>Again</Pad>
          <Pad onPress={() => kitchen.go('#/rehearse')}>Rehearse others</Pad>
          {draftId ? (
            <Pad onPress={() => kitchen.go(`#/protocols/write/${encodeURIComponent(draftId)}`)}>Back to the draft</Pad>
          ) : null}
          {only && !more && !draftId ? (
            <Pad look="solid" onPress={() => kitchen.go(`#/start/${encodeURIComponent(only.protocolId)}`)}>
              Start a real pot
            </Pad>
          ) : null}
        </>
      }
    >
      <Pots report={report} />
      {report.pots.length > 1 ? <Meetings report={report} /> : null}
      <Waits report={report} />
      <p class="soft">Nothing of this was kept.</p>
    </Page>
  )
}

function Pots({ report }: { report: RehearsalReport }): preact.JSX.Element {
  return (
    <ul class="rehearse-told">
      {report.pots.map(({ name, title, tookMs, sounds, mostAnHour }) => (
        <li key={name}>
          <strong>{`${name}: ${title}`}</strong>
          <span>
            {tookMs === null ? 'did not come to its end' : `took ${showDuration(tookMs)}`}
            {`, ${sounds} calls, at most ${mostAnHour} in an hour`}
          </span>
          {mostAnHour > SOUNDS_AN_HOUR_MOST ? (
            <span>{`More than ${SOUNDS_AN_HOUR_MOST} calls in an hour are no longer heard: make fewer or longer waits.`}</span>
          ) : null}
        </li>
      ))}
    </ul>
  )
}

function Meetings({ report: { meetings } }: { report: RehearsalReport }): preact.JSX.Element {
  return (
    <section aria-labelledby="rehearse-meetings">
      <h2 id="rehearse-meetings">Hands wanted by two pots at once</h2>
      {meetings.length === 0 ? (
        <p>Never.</p>
      ) : (
        <ol class="rehearse-told">
          {meetings.map(({ atMs, first, second, waitedMs }) => (
            <li key={`${atMs} ${first} ${second}`}>
              <strong>{`At ${clock(atMs)}`}</strong>
              <span>{`${first} first; ${second} was done ${waitedMs < 1_000 ? 'at once' : `${showDuration(waitedMs)} after its call`}`}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}

function Waits({ report: { acts } }: { report: RehearsalReport }): preact.JSX.Element {
  const late = acts.filter(({ waitedMs }) => waitedMs >= WAIT_LEAST_MS)
  const longest = [...late].sort((a, b) => b.waitedMs - a.waitedMs).slice(0, WAITS_SHOWN)
  return (
    <section aria-labelledby="rehearse-waits">
      <h2 id="rehearse-waits">Answered late</h2>
      <p>
        {late.length === 0
          ? `All ${acts.length} acts were done within a minute of their call.`
          : `${late.length} of ${acts.length} acts were done a minute or more after their call${late.length > longest.length ? '; the longest' : ''}:`}
      </p>
      <ol class="rehearse-told">
        {longest.map(({ pot, act, atMs, waitedMs }) => (
          <li key={`${pot} ${act} ${atMs}`}>
            <strong>{`${pot}: ${act}`}</strong>
            <span>{`called at ${clock(atMs)}, done ${showDuration(waitedMs)} later`}</span>
          </li>
        ))}
      </ol>
    </section>
  )
}
