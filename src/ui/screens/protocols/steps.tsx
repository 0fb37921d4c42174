// A programme as plain steps, numbered as a reader counts them, each with its cautions: in full where one is met for the
// first time, as a line from then on.
import type { Node, Programme, Question, Rounds, Step } from '../../../core/protocol/model.ts'
import { showDose, showDuration, showTemperatureRange, type Units } from '../../../core/quantity/index.ts'
import { expectedCautions } from '../../../core/safety/before-start.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import { CautionBox } from '../../parts/caution-box.tsx'
import { KnotMark } from '../../parts/knot-mark.tsx'

type Shown = { cautions: Map<string, Caution[]>; first: Map<string, string>; units: Units }

export function Steps({ programme, units }: { programme: Programme; units: Units }): preact.JSX.Element {
  const cautions = new Map<string, Caution[]>()
  const first = new Map<string, string>()
  for (const { path, cautions: found } of expectedCautions(programme)) {
    cautions.set(path, found)
    for (const { id } of found) if (!first.has(id)) first.set(id, path)
  }
  return <Sequence nodes={programme.steps} shown={{ cautions, first, units }} />
}

function Sequence({ nodes, shown }: { nodes: readonly Node[]; shown: Shown }): preact.JSX.Element {
  return (
    <ol class="protocols-steps">
      {nodes.map((node) => (
        <li key={node.path}>
          <OneNode node={node} shown={shown} />
        </li>
      ))}
    </ol>
  )
}

function OneNode({ node, shown }: { node: Node; shown: Shown }): preact.JSX.Element {
  switch (node.node) {
    case 'step':
      return <OneStep step={node} shown={shown} />
    case 'rounds':
      return <Loop node={node} shown={shown} />
    case 'choice':
      return (
        <>
          <OneStep step={node.ask} shown={shown} />
          {node.answers.map((answer) => (
            <div key={answer.path} class="protocols-branch">
              <h3>{`If ${answer.label}`}</h3>
              {answer.steps.length === 0 ? <p>Go on.</p> : <Sequence nodes={answer.steps} shown={shown} />}
            </div>
          ))}
        </>
      )
    case 'alongside':
      return (
        <>
          <p class="protocols-call">At the same time</p>
          {node.branches.map((branch) => (
            <div key={branch.path} class="protocols-branch">
              <h3>{branch.label}</h3>
              <Sequence nodes={branch.steps} shown={shown} />
            </div>
          ))}
        </>
      )
  }
}

/** A loop shows its first pass and how many there are: the others are the same with another number. */
function Loop({ node, shown }: { node: Rounds; shown: Shown }): preact.JSX.Element {
  const pass = node.rounds[0]
  if (node.kind !== 'until') {
    return (
      <>
        <p class="protocols-call">{`${node.rounds.length} times${node.kind === 'each' ? `, ${pass?.label ?? ''} first` : ''}`}</p>
        <div class="protocols-branch">{pass ? <Sequence nodes={pass.steps} shown={shown} /> : null}</div>
      </>
    )
  }
  const most = node.rounds.length - 1
  return (
    <>
      {pass?.ask ? <OneStep step={pass.ask} shown={shown} /> : null}
      <div class="protocols-branch">
        <h3>{`If not, at most ${most} ${most === 1 ? 'time' : 'times'}, then ask again`}</h3>
        {pass ? <Sequence nodes={pass.steps} shown={shown} /> : null}
      </div>
      {node.otherwise ? (
        <div class="protocols-branch">
          <h3>{`If still not after ${most}`}</h3>
          <Sequence nodes={node.otherwise.steps} shown={shown} />
        </div>
      ) : null}
    </>
  )
}

function OneStep({ step, shown }: { step: Step; shown: Shown }): preact.JSX.Element {
  const { units } = shown
  const lines = linesOf(step, units)
  const cautions = shown.cautions.get(step.path) ?? []
  const isFirst = (caution: Caution): boolean => shown.first.get(caution.id) === step.path
  const again = cautions.filter((caution) => !isFirst(caution))
  return (
    <div class="protocols-step">
      <svg class="protocols-knot" width="28" height="28" viewBox="-14 -14 28 28" aria-hidden="true">
        <KnotMark shape={step.shape} x={0} y={0} />
      </svg>
      <div class="protocols-step-words">
        <p class="protocols-call">
          {step.wait || step.ramp ? step.doing : step.call}
          {step.dose ? `: ${showDose(step.dose.amount, units)} of ${step.dose.amount.of}` : ''}
        </p>
        {step.detail ? <p>{step.detail}</p> : null}
        {lines.length > 0 ? <p class="soft">{lines.join(' · ')}</p> : null}
        {cautions.filter(isFirst).map((caution) => (
          <CautionBox key={caution.id} title={caution.title} say={caution.say} source={caution.source} />
        ))}
        {again.length > 0 ? <p class="protocols-again">{again.map((caution) => caution.short).join(' ')}</p> : null}
      </div>
    </div>
  )
}

function linesOf(step: Step, units: Units): string[] {
  const { wait, ramp, setPoint, question, outOfBathMostMs, lookEveryMs } = step
  const lines: string[] = []
  if (ramp) lines.push(`to ${showTemperatureRange(ramp, units)}`, `about ${showDuration(step.clock.likelyMs)}`)
  if (wait?.forMs != null) {
    const from = wait.from === null ? '' : ` from ${wait.from}`
    lines.push(`${wait.graceMs === null ? 'at least ' : ''}${showDuration(wait.forMs)}${from}`)
  }
  for (const until of wait?.until ?? []) {
    if (until.kind === 'temperature') lines.push(`until ${showTemperatureRange(until, units)}`)
    if (until.kind === 'moment') lines.push(`until ${until.name}`)
    if (until.kind === 'person') lines.push(`until ${until.ask}`)
    if (until.kind === 'judgement') lines.push(`until ${questionWords(until.question)}`)
  }
  if (setPoint && (setPoint.lowC !== null || setPoint.highC !== null))
    lines.push(`at ${showTemperatureRange(setPoint, units)}`)
  if (question) lines.push(questionWords(question))
  if (step.hands.likelyMs > 0) lines.push(`hands ${showDuration(step.hands.likelyMs)}`)
  if (outOfBathMostMs !== null) lines.push(`out of the bath at most ${showDuration(outOfBathMostMs)}`)
  if (lookEveryMs !== null) lines.push(`look at the water every ${showDuration(lookEveryMs)}`)
  for (const forbidden of step.forbids) lines.push(`do not ${forbidden}`)
  if (step.records.length > 0) lines.push(`write down ${step.records.join(', ')}`)
  return lines
}

function questionWords(question: Question): string {
  switch (question.kind) {
    case 'grade':
      return question.enough === null
        ? `grade the ${question.of}`
        : `grade the ${question.of}: ${question.enough} is enough`
    case 'temperature':
      return 'read the temperature'
    case 'ph':
      return 'read the pH'
    case 'number':
    case 'text':
      return question.ask
    case 'choice':
      return question.answers.map((answer) => answer.label).join(' or ')
  }
}
