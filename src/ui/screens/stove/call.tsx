// A pot that asks fills the screen: pot, act, amount, cup, caution, how late. One act, one pot.
import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Answer } from '../../../core/pot/events.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { CautionBox } from '../../parts/caution-box.tsx'
import { FitText } from '../../parts/fit-text.tsx'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Pad } from '../../parts/pad.tsx'
import { useSettled } from '../../parts/settled.ts'
import { AgoRow } from './ago-row.tsx'
import { alertMomentMs } from './alert-words.ts'
import { amountSay, cupSay } from './amount.ts'
import { AskPanel } from './ask/ask-panel.tsx'
import { calledBy } from './asks.ts'
import type { Call as CallOf } from './calls.ts'
import { markShown, shownBefore, stepCautions } from './cautions.ts'
import { expectedTempC } from './expected.ts'
import { nameOf } from './live.ts'
import { pressCall } from './press.ts'
import { cueNow, type Stage } from './stage.ts'
import { Left, OutOfBath } from './time-leaf.tsx'
import { undoName } from './undo-say.ts'
import { WET } from './wet.tsx'
import './call.css'

type Props = { kitchen: Kitchen; stage: Stage; call: CallOf; callKey: string; children?: ComponentChildren }

export function Call({ kitchen, stage, call, callKey, children }: Props): preact.JSX.Element {
  const { pot, alert } = call
  const { state } = pot
  const called = calledBy(state, alert)
  const amount = called.step?.dose ? amountSay(called.step.dose.amount, kitchen.settings.value) : null
  const question = called.ask?.kind === 'question'
  const cautions = called.step ? stepCautions(state, called.step, kitchen.now.peek()) : []
  return (
    <section
      class="call"
      aria-label={`${nameOf(pot)} calls`}
      data-urgency={alert.urgency}
      data-escalates={alert.escalates ? '' : undefined}
      data-question={question ? '' : undefined}
      style={{ '--bath': bathColour(state.pot.colour) }}
    >
      {children ? <div class="call-strips">{children}</div> : null}
      <header class="call-head">
        <FitText text={nameOf(pot)} mostPx={64} leastPx={20} tag="h1" className="call-pot" />
        <div class="call-when">
          <Late kitchen={kitchen} atMs={alertMomentMs(state, alert)} />
          {kitchen.settings.value.wet ? <p class="call-wet">{WET}</p> : null}
        </div>
        <Pad kind="lesser" look="bath" label="See pots" className="call-aside" onPress={() => layAside(stage, callKey)}>
          See
          <br />
          pots
        </Pad>
      </header>
      <div class="call-says">
        <FitText
          text={
            amount
              ? `${called.act}
${amount}`
              : called.act
          }
          mostPx={question ? 60 : 160}
          leastPx={26}
          tag="h2"
          className="call-act"
        />
        <p class="call-detail">
          {[called.step ? cupSay(state, called.step) : null, called.step?.detail].filter(Boolean).join(', ')}
        </p>
        {state.outSinceMs === null ? null : (
          <OutOfBath kitchen={kitchen} sinceMs={state.outSinceMs} limitAtMs={state.outLimitAtMs} />
        )}
        {called.step?.forbids.length ? (
          <p class="call-detail">Do not {called.step.forbids.join(', do not ')}.</p>
        ) : null}
        <Cautions stage={stage} potId={pot.potId} path={alert.path} cautions={cautions} />
      </div>
      <Answers kitchen={kitchen} stage={stage} call={call} callKey={callKey} />
    </section>
  )
}

function layAside(stage: Stage, callKey: string): void {
  stage.aside.value = new Set([...stage.aside.value, callKey])
}

function Late({ kitchen, atMs }: { kitchen: Kitchen; atMs: number }): preact.JSX.Element {
  return (
    <p class="call-late">
      <Left kitchen={kitchen} atMs={atMs} />
    </p>
  )
}

type CautionsProps = { stage: Stage; potId: string; path: string | null; cautions: Caution[] }

/** In full at the first use of the day, from then on its one line. What was shown is written down. */
function Cautions({ stage, potId, path, cautions }: CautionsProps): preact.JSX.Element | null {
  // Chosen once: a caution does not change while it is read.
  const [fullId] = useState(() => cautions.find((c) => !shownBefore(c.id))?.id ?? null)
  const full = cautions.find((c) => c.id === fullId) ?? null
  const rest = cautions.filter((c) => c !== full)
  useEffect(() => {
    if (fullId === null) return
    markShown(fullId)
    stage.note(potId, { type: 'ShowCaution', caution: fullId, path })
  }, [fullId, stage, potId, path])
  if (cautions.length === 0) return null
  return (
    <div class="call-cautions">
      {full ? <CautionBox look="bath" title={full.title} say={full.say} /> : null}
      {rest.length > 0 ? <p class="call-caution-line">{rest.map((c) => c.short).join(' ')}</p> : null}
    </div>
  )
}

function Answers({ kitchen, stage, call, callKey }: Props): preact.JSX.Element {
  const { pot, alert } = call
  const { state, potId } = pot
  const called = calledBy(state, alert)
  const { ask, step } = called
  const name = nameOf(pot)
  const busy = stage.busy.value
  // Settled: the clock ticks each second, the answers are drawn again only when their cue is over.
  const cued = useSettled(() => ask?.kind === 'done' && cueNow(kitchen, potId, ask.path) !== null)
  const answer = (given: Answer): void => {
    if (ask?.kind === 'question') void stage.send(potId, { type: 'AnswerStep', path: ask.path, answer: given })
  }
  return (
    <div class="call-answers">
      {ask?.kind === 'question' ? (
        <AskPanel
          key={callKey}
          question={ask.question}
          expectedC={expectedTempC(state, ask.question, kitchen.now.peek())}
          settings={kitchen.settings.value}
          look="bath"
          layoutKey={callKey}
          onAnswer={answer}
        />
      ) : (
        <Pad
          kind="main"
          look="bath"
          className="call-pad"
          layoutKey={callKey}
          disabled={busy}
          onPress={() => pressCall(stage, call)}
        >
          <FitText
            text={`${name}: ${ask?.say ?? 'heat is off'}`}
            mostPx={54}
            leastPx={24}
            tag="span"
            className="call-pad-fit"
          />
        </Pad>
      )}
      <AgoRow stage={stage} cued={cued} />
      <Lesser stage={stage} call={call} callKey={callKey} step={step} />
    </div>
  )
}

type LesserProps = Pick<Props, 'stage' | 'call' | 'callKey'> & { step: ReturnType<typeof calledBy>['step'] }

/** What else can be said to a call: not yet, another amount, anything more, trouble. */
function Lesser({ stage, call, callKey, step }: LesserProps): preact.JSX.Element {
  const { pot, alert } = call
  const { potId } = pot
  const name = nameOf(pot)
  return (
    <div class="call-lesser">
      <UndoPad stage={stage} pot={pot} callKey={callKey} />
      {alert.kind === 'call' && alert.path !== null ? (
        <Pad
          kind="lesser"
          look="bath"
          layoutKey={callKey}
          onPress={() => (stage.open.value = { kind: 'not-yet', potId, path: alert.path as string })}
        >
          Not yet
        </Pad>
      ) : null}
      {step?.dose ? (
        <Pad
          kind="lesser"
          look="bath"
          className="call-other"
          layoutKey={callKey}
          onPress={() =>
            (stage.open.value = {
              kind: 'amount',
              potId,
              path: step.path,
              planned: (step.dose as NonNullable<typeof step.dose>).amount
            })
          }
        >
          Other amount
        </Pad>
      ) : null}
      <Pad
        kind="lesser"
        look="bath"
        label={`${name}: more`}
        onPress={() => (stage.open.value = { kind: 'more', potId })}
      >
        More
      </Pad>
      <HoldPad
        kind="lesser"
        look="bath"
        label={`Trouble hold: ${name}`}
        onHeld={() => (stage.open.value = { kind: 'trouble', potId })}
      >
        <span>Trouble</span> <small>hold</small>
      </HoldPad>
    </div>
  )
}

type UndoProps = Pick<Props, 'stage' | 'callKey'> & { pot: CallOf['pot'] }

/** Until the pot's next act, that is: here, before this call is answered. */
function UndoPad({ stage, pot, callKey }: UndoProps): preact.JSX.Element | null {
  if (!pot.state.undo) return null
  const name = undoName(pot.state)
  return (
    <Pad
      kind="lesser"
      look="bath"
      className="call-undo"
      layoutKey={`${callKey} ${pot.state.undo.commandId}`}
      disabled={stage.busy.value}
      label={`Undo ${name}`}
      onPress={() => void stage.send(pot.potId, { type: 'Undo' })}
    >
      <FitText text={`Undo ${name}`} mostPx={18} leastPx={11} tag="span" className="call-undo-fit" />
    </Pad>
  )
}
