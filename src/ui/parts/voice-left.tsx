import { useEffect, useState } from 'preact/hooks'
import type { Voice } from '../media.ts'

/** How long the note still runs, in whole seconds. A leaf: it redraws several times a second. */
export function VoiceLeft({ voice }: { voice: Voice }): preact.JSX.Element {
  const [leftMs, setLeftMs] = useState(voice.leftMs())
  useEffect(() => {
    const timer = setInterval(() => setLeftMs(voice.leftMs()), 200)
    return () => clearInterval(timer)
  }, [voice])
  return <>{Math.ceil(leftMs / 1000)} s</>
}
