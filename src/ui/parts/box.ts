// How large a thing is on the screen, kept up to date.
import type { RefObject } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'

export type Box = { width: number; height: number }

/** The inner size of an element, px. `first` holds until it is measured. */
export function useBox(ref: RefObject<Element | null>, first: Box): Box {
  const [box, setBox] = useState(first)
  useLayoutEffect(() => {
    const node = ref.current
    if (!node || typeof ResizeObserver === 'undefined') return
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = node
      if (width > 0) setBox((was) => (was.width === width && was.height === height ? was : { width, height }))
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(node)
    return () => observer.disconnect()
  }, [ref])
  return box
}

/** The size of the window, px. */
export function useWindow(): Box {
  const measure = (): Box => ({ width: window.innerWidth, height: window.innerHeight })
  const [box, setBox] = useState(measure)
  useLayoutEffect(() => {
    const changed = (): void => setBox(measure())
    addEventListener('resize', changed)
    return () => removeEventListener('resize', changed)
  }, [])
  return box
}
