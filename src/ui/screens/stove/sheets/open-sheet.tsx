// What lies open over the Stove.
import type { Kitchen } from '../../../kitchen.ts'
import { bathColour } from '../../../parts/bath-colour.ts'
import { later } from '../../../parts/later.tsx'
import { Sheet } from '../../../parts/sheet.tsx'
import { AgoRow } from '../ago-row.tsx'
import { enteredAmount } from '../amount.ts'
import { AskPanel } from '../ask/ask-panel.tsx'
import { NumberPads } from '../ask/number-pads.tsx'
import { TextAnswer } from '../ask/text-answer.tsx'
import { questionSay } from '../asks.ts'
import { expectedTempC } from '../expected.ts'
import { type LivePot, livePots, nameOf } from '../live.ts'
import { type Open, openNow, type Stage } from '../stage.ts'
import { capital } from '../words.ts'
import { Finish } from './finish.tsx'
import { NotYet } from './not-yet.tsx'
import { Resume } from './resume.tsx'
import { Trouble } from './trouble.tsx'

const More = later(() => import('./more.tsx'))
const FreeDeeds = later(() => import('./deeds-free.tsx'))
const Photo = later(() => import('./photo.tsx'))
const VoiceNote = later(() => import('./voice-note.tsx'))

type Props = { kitchen: Kitchen; stage: Stage }

export function OpenSheet({ kitchen, stage }: Props): preact.JSX.Element | null {
  const open = openNow(stage)
  if (!open) return null
  const pot = livePots(kitchen.pots.value).find((p) => p.potId === open.potId)
  if (!pot) return null
  return (
    <Sheet
      key={JSON.stringify(open)}
      title={titleOf(open, pot)}
      onClose={stage.close}
      style={{ '--bath': bathColour(pot.state.pot.colour) }}
    >
      {stage.said.value?.potId === pot.potId ? (
        <p class="sheet-said" role="alert">
          {stage.said.value.say}
        </p>
      ) : null}
      <Inside kitchen={kitchen} stage={stage} open={open} pot={pot} />
    </Sheet>
  )
}

function titleOf(open: Open, pot: LivePot): string {
  const name = nameOf(pot)
  switch (open.kind) {
    case 'read':
      return `${name}: read temperature`
    case 'ask':
      return `${name}: ${questionSay(open.question)}`
    case 'not-yet':
      return `${name}: not yet`
    case 'amount':
      return `${name}: what went in`
    case 'more':
      return name
    case 'deeds':
      return `${name}: what was done`
    case 'note':
      return `${name}: note`
    case 'resume':
      return `${name}: go on`
    case 'finish':
      return `${name}: finish`
    case 'trouble':
      return `${name}: trouble`
    case 'photo':
      return `${name}: photo`
    case 'voice':
      return `${name}: voice note`
  }
}

type InsideProps = Props & { open: Open; pot: LivePot }

function Inside({ kitchen, stage, open, pot }: InsideProps): preact.JSX.Element {
  const { potId, state } = pot
  const settings = kitchen.settings.value
  const send = (command: Parameters<Stage['send']>[1]): void => {
    void stage.send(potId, command).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  switch (open.kind) {
    case 'read':
      return <ReadTemperature kitchen={kitchen} stage={stage} pot={pot} send={send} />
    case 'ask':
      return (
        <>
          {'ask' in open.question ? <h3>{capital(open.question.ask)}</h3> : null}
          <AskPanel
            question={open.question}
            expectedC={expectedTempC(state, open.question, kitchen.now.peek())}
            settings={settings}
            look="plain"
            layoutKey={open.path}
            onAnswer={(answer) => send({ type: 'AnswerStep', path: open.path, answer })}
          />
          <AgoRow stage={stage} look="plain" />
        </>
      )
    case 'amount':
      return (
        <NumberPads
          first={open.planned.value}
          unit={open.planned.unit === 'count' ? '' : open.planned.unit}
          look="plain"
          layoutKey={open.path}
          say={`${capital(open.planned.of)}:`}
          onNumber={(value) => send({ type: 'MarkDone', path: open.path, added: enteredAmount(open.planned, value) })}
        />
      )
    case 'note':
      return <TextAnswer ask="What was seen" onText={(text) => send({ type: 'WriteNote', text })} />
    case 'not-yet':
      return <NotYet stage={stage} pot={pot} path={open.path} />
    case 'resume':
      return <Resume kitchen={kitchen} stage={stage} pot={pot} />
    case 'finish':
      return <Finish stage={stage} pot={pot} />
    case 'trouble':
      return <Trouble kitchen={kitchen} stage={stage} pot={pot} />
    case 'more':
      return <More kitchen={kitchen} stage={stage} pot={pot} />
    case 'deeds':
      return <FreeDeeds kitchen={kitchen} stage={stage} pot={pot} />
    case 'photo':
      return <Photo kitchen={kitchen} stage={stage} pot={pot} />
    case 'voice':
      return <VoiceNote kitchen={kitchen} stage={stage} pot={pot} />
  }
}

type ReadProps = Omit<InsideProps, 'open'> & { send: (command: Parameters<Stage['send']>[1]) => void }

function ReadTemperature({ kitchen, stage, pot, send }: ReadProps): preact.JSX.Element {
  return (
    <>
      <AskPanel
        question={{ kind: 'temperature', lowC: null, highC: null }}
        expectedC={expectedTempC(pot.state, null, kitchen.now.peek())}
        settings={kitchen.settings.value}
        look="plain"
        layoutKey="read"
        onAnswer={(answer) => answer.kind === 'temperature' && send({ type: 'ReadTemperature', tempC: answer.tempC })}
      />
      <AgoRow stage={stage} look="plain" />
    </>
  )
}
