// A voice note: one pad starts it, the same pad ends it, and at 30 s it ends by itself.
import type { Kitchen } from '../../../kitchen.ts'
import type { Voice, VoiceState } from '../../../media.ts'
import { Pad } from '../../../parts/pad.tsx'
import { VoiceLeft } from '../../../parts/voice-left.tsx'
import { type LivePot, livePots, nameOf } from '../live.ts'
import type { Stage } from '../stage.ts'
import './media.css'

type Props = { kitchen: Kitchen; stage: Stage; pot: LivePot }

export default function VoiceNote({ kitchen, stage, pot }: Props): preact.JSX.Element | null {
  const voice = kitchen.media?.voice
  if (!voice) return null
  const state = voice.state.value
  const name = nameOf(pot)
  if ('potId' in state && state.potId !== pot.potId && (state.kind === 'recording' || state.kind === 'storing')) {
    return <Elsewhere kitchen={kitchen} voice={voice} potId={state.potId} />
  }
  const mine: VoiceState = 'potId' in state && state.potId === pot.potId ? state : { kind: 'idle' }
  const recording = mine.kind === 'recording'
  return (
    <div class="voice">
      <Says voice={voice} state={mine} />
      {mine.kind === 'failed' && mine.again ? (
        <Pad kind="main" look="solid" layoutKey="again" onPress={voice.again}>
          {name}: write it down again
        </Pad>
      ) : null}
      <Pad
        kind="main"
        look={recording ? 'bad' : 'solid'}
        layoutKey={recording ? 'end' : 'start'}
        disabled={mine.kind === 'asking' || mine.kind === 'storing'}
        onPress={() => (recording ? voice.end() : voice.start(pot.potId))}
      >
        {recording ? `${name}: end the note` : `${name}: ${mine.kind === 'stored' ? 'speak again' : 'speak'}`}
      </Pad>
      {mine.kind === 'stored' ? (
        <Pad
          kind="lesser"
          onPress={() => {
            voice.dismiss()
            stage.close()
          }}
        >
          Done
        </Pad>
      ) : null}
      <p class="soft">
        Up to 30 s, kept with the step and the time. The microphone is open only while it records. A call comes first;
        the note goes on under it.
      </p>
    </div>
  )
}

function Says({ voice, state }: { voice: Voice; state: VoiceState }): preact.JSX.Element {
  switch (state.kind) {
    case 'idle':
      return <p class="voice-left">30 s</p>
    case 'asking':
      return <p role="status">Asking for the microphone. Allow it where the browser asks.</p>
    case 'recording':
      return (
        <>
          <p class="voice-open" role="status">
            Microphone open
          </p>
          <p class="voice-left" aria-hidden="true">
            <VoiceLeft voice={voice} />
          </p>
        </>
      )
    case 'storing':
      return <p role="status">Writing it down…</p>
    case 'stored':
      return (
        <p role="status">Written down, {Math.max(1, Math.round(state.lengthMs / 1000))} s. The microphone is shut.</p>
      )
    case 'failed':
      return (
        <p class="sheet-said" role="alert">
          {state.say}
        </p>
      )
  }
}

/** One microphone, one note. */
function Elsewhere({ kitchen, voice, potId }: { kitchen: Kitchen; voice: Voice; potId: string }): preact.JSX.Element {
  const other = livePots(kitchen.pots.value).find((pot) => pot.potId === potId)
  const name = other ? nameOf(other) : 'another pot'
  return (
    <div class="voice">
      <p class="voice-open" role="status">
        Microphone open for {name}
      </p>
      <p class="voice-left" aria-hidden="true">
        <VoiceLeft voice={voice} />
      </p>
      <Pad kind="main" look="bad" layoutKey={potId} onPress={voice.end}>
        {name}: end the note
      </Pad>
    </div>
  )
}
