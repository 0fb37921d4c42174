import type { RefObject } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'

/** The first of `levels` whose drawing fits: each is drawn and measured, from the fullest down, before anything is shown.
 * `of` names what is drawn: another thing begins at the fullest again. */
export function useFitted(
  body: RefObject<HTMLElement | null>,
  of: string,
  levels: number,
  fits: (body: HTMLElement) => boolean
): number {
  const [at, setAt] = useState({ of, level: 0 })
  const level = at.of === of ? at.level : 0
  const look = (): void => {
    if (body.current && level + 1 < levels && !fits(body.current)) setAt({ of, level: level + 1 })
  }
  useLayoutEffect(look)
  // What is drawn in it may measure itself afterwards, and grow.
  useLayoutEffect(() => {
    if (!body.current || typeof ResizeObserver === 'undefined') return
    const observer = new ResizeObserver(look)
    observer.observe(body.current)
    return () => observer.disconnect()
  })
  return level
}
