// On every screen: that the microphone is open and for which pot, and what became of the note.
import { useEffect } from 'preact/hooks'
import type { Kitchen } from '../kitchen.ts'
import type { Voice } from '../media.ts'
import { useWindow } from './box.ts'
import { Pad } from './pad.tsx'
import { Strip } from './strip.tsx'
import { VoiceLeft } from './voice-left.tsx'

/** How long the good news stands; the bad stands until it is read. */
const STORED_MS = 8_000

export function VoiceStrip({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element | null {
  const voice = kitchen.media?.voice
  const state = voice?.state.value
  const stored = state?.kind === 'stored'
  useEffect(() => {
    if (!stored) return
    const timer = setTimeout(() => voice?.dismiss(), STORED_MS)
    return () => clearTimeout(timer)
  }, [stored, voice])
  if (!voice || !state || !('potId' in state)) return null
  const name = nameOf(kitchen, state.potId)
  switch (state.kind) {
    case 'asking':
      return <Strip>{name}: asking for the microphone.</Strip>
    case 'recording':
      return <Recording voice={voice} name={name} />
    case 'storing':
      return <Strip>{name}: writing the voice note down.</Strip>
    case 'stored':
      return <Strip>{name}: voice note written down. The microphone is shut.</Strip>
    case 'failed':
      return (
        <Strip
          tone="warn"
          urgent
          actions={
            <>
              {state.again ? (
                <Pad kind="lesser" onPress={voice.again}>
                  Again
                </Pad>
              ) : null}
              <Pad kind="lesser" onPress={voice.dismiss}>
                Close
              </Pad>
            </>
          }
        >
          {name}: {state.say}
        </Strip>
      )
  }
}

function Recording({ voice, name }: { voice: Voice; name: string }): preact.JSX.Element {
  // A phone on its side has no height to spare over a call.
  const kind = useWindow().height < 560 ? 'control' : 'lesser'
  return (
    <Strip
      tone="warn"
      actions={
        <Pad kind={kind} look="bad" layoutKey="voice-end" label={`End the voice note for ${name}`} onPress={voice.end}>
          End
        </Pad>
      }
    >
      {name}: microphone open
      {/* Not for the ear: it would be read out each second, over the voice. */}
      <span aria-hidden="true">
        , <VoiceLeft voice={voice} />
      </span>
    </Strip>
  )
}

function nameOf(kitchen: Kitchen, potId: string): string {
  const pot = kitchen.pots.value.find((one) => one.potId === potId)
  if (!pot || pot.state.status === 'idle') return 'Voice note'
  return pot.state.pot.colourway || pot.state.pot.letter
}
