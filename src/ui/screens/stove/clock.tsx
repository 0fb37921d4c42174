import type { Kitchen } from '../../kitchen.ts'
import { clockSay } from './words.ts'

/** The time of day, a leaf of its own. */
export function Clock({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return <time class="clock">{clockSay(kitchen.now.value)}</time>
}
