// Words as large as their place allows: an act is read from across the kitchen, and its length is the protocol's.
import { useLayoutEffect, useRef } from 'preact/hooks'
import './fit-text.css'

export type FitTextProps = {
  text: string
  mostPx: number
  leastPx: number
  /** What decides the size when it is not the text: a countdown keeps its size while its figures run. */
  shape?: string
  className?: string
  /** Smaller words after it, on the same line. */
  tail?: string | null
  tag?: 'p' | 'h1' | 'h2' | 'div' | 'span'
}

export function FitText({
  text,
  mostPx,
  leastPx,
  shape,
  className,
  tail,
  tag: Tag = 'p'
}: FitTextProps): preact.JSX.Element {
  const place = useRef<HTMLElement>(null)
  const key = `${shape ?? text} ${tail ?? ''}`
  useLayoutEffect(() => {
    const node = place.current
    if (!node || typeof ResizeObserver === 'undefined') return
    let fitted = ''
    // An observer tells of the place as it is too, when it begins.
    const fit = (): void => {
      const place = `${node.clientWidth} ${node.clientHeight}`
      if (place !== fitted) fitInto(node, mostPx, leastPx)
      fitted = place
    }
    fit()
    const observer = new ResizeObserver(fit)
    observer.observe(node)
    return () => observer.disconnect()
  }, [key, mostPx, leastPx])
  return (
    <Tag class={`fit${className ? ` ${className}` : ''}`} ref={place as never}>
      <span>
        {text}
        {tail ? <small> {tail}</small> : null}
      </span>
    </Tag>
  )
}

/** How far beside its guess the size is looked for first. */
const BESIDE = 0.06

/** The largest size at which nothing is cut, to the pixel. Each look costs a layout, and a call waits for it: so the
 * first look tells where to look next. */
function fitInto(node: HTMLElement, mostPx: number, leastPx: number): void {
  const inner = node.firstElementChild as HTMLElement | null
  const { clientWidth, clientHeight } = node
  if (!inner || clientWidth === 0) return
  const fits = (px: number): boolean => {
    inner.style.fontSize = `${px}px`
    return inner.offsetHeight <= clientHeight + 1 && inner.scrollWidth <= clientWidth + 1
  }
  if (fits(mostPx)) return
  // On one line the width goes with the size; over several lines it is the area that does.
  const byWidth = clientWidth / inner.scrollWidth
  const byArea = Math.sqrt(clientHeight / inner.offsetHeight)
  const guess = Math.min(mostPx, Math.max(leastPx, mostPx * Math.min(byWidth, byArea)))
  let low = leastPx
  let high = mostPx
  const look = (px: number): boolean => {
    if (px <= low || px >= high) return false
    const fit = fits(px)
    if (fit) low = px
    else high = px
    return fit
  }
  if (look(guess)) look(guess * (1 + BESIDE))
  else look(guess * (1 - BESIDE))
  while (high - low > 1) look((low + high) / 2)
  fits(low)
}
