// A part of the app that is loaded when it is first opened. From the second time on it is there at once.
import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Pad } from './pad.tsx'

type Loaded<P> = { default: ComponentType<P> }

/** `fetched` resolves when it is there. */
export type LaterPart<P> = ComponentType<P> & { fetchNow(): void; fetched(): Promise<void> }

/** `load` is an import: its file comes from the app's own cache, also without a network. `fetchNow` loads it ahead of its
 * first use: what a call needs must be there before the call. */
export function later<P extends object>(load: () => Promise<Loaded<P>>): LaterPart<P> {
  let ready: ComponentType<P> | null = null
  const fetched = (): Promise<void> =>
    load().then((module) => {
      ready = module.default
    })
  return Object.assign(Later, {
    fetched,
    fetchNow(): void {
      // What fails here is tried again, and told, when it is opened.
      if (!ready) void fetched().catch(() => {})
    }
  })
  function Later(props: P): preact.JSX.Element {
    const [, redraw] = useState(0)
    const [failed, setFailed] = useState(false)
    const [tries, setTries] = useState(0)
    useEffect(() => {
      if (ready) return
      let here = true
      fetched().then(
        () => here && redraw((n) => n + 1),
        () => here && setFailed(true)
      )
      return () => {
        here = false
      }
    }, [tries])
    if (ready) {
      const Ready = ready
      return <Ready {...props} />
    }
    if (!failed) return <p class="soft">Opening…</p>
    return (
      <div role="alert">
        <p>This part could not be loaded.</p>
        <Pad
          onPress={() => {
            setFailed(false)
            setTries(tries + 1)
          }}
        >
          Try again
        </Pad>
      </div>
    )
  }
}
