// How a strip is read where dye stains it and heat shifts it: a cooled spoonful, and the maker's seconds counted down.
import { useEffect, useState } from 'preact/hooks'
import { Pad } from '../../../parts/pad.tsx'
import type { AskLook } from './ask-panel.tsx'

/** How long "read it now" stands: a strip goes on turning. */
const NOW_S = 20
const LOOK_MS = 200

export function StripGuide({ seconds, look }: { seconds: number; look: AskLook }): preact.JSX.Element {
  const [dippedMs, setDippedMs] = useState<number | null>(null)
  const [leftS, setLeftS] = useState(0)
  useEffect(() => {
    if (dippedMs === null) return
    const count = (): void => {
      const left = Math.ceil(seconds - (performance.now() - dippedMs) / 1000)
      setLeftS(left)
      if (left < -NOW_S) setDippedMs(null)
    }
    count()
    const timer = setInterval(count, LOOK_MS)
    return () => clearInterval(timer)
  }, [dippedMs, seconds])
  const begin = (): void => {
    setLeftS(seconds)
    setDippedMs(performance.now())
  }
  return (
    <div class="strip-guide">
      <p class="strip-guide-say" role="status">
        {dippedMs !== null && leftS <= 0 ? <strong>Read it now.</strong> : guideSay(seconds)}
      </p>
      {seconds === 0 ? null : (
        <Pad kind="lesser" look={look} label={`Dipped: count ${seconds} s`} onPress={begin}>
          <span class="strip-guide-count number">
            {dippedMs === null ? `Dipped: count ${seconds} s` : leftS > 0 ? `${leftS} s` : 'Read it. Dip again'}
          </span>
        </Pad>
      )}
    </div>
  )
}

function guideSay(seconds: number): string {
  const at = seconds === 0 ? 'at the seconds on the box' : `after ${seconds} s`
  return `Cool a spoonful first: heat shifts a strip. Dip, and read it ${at}.`
}
