import type { Kitchen } from '../kitchen.ts'

/** Asked before a step that takes its time; what it gives leads on, as long as nobody went elsewhere meanwhile. */
export function onward(kitchen: Pick<Kitchen, 'route' | 'go'>): (to: string) => void {
  const from = kitchen.route.peek()
  return (to) => {
    if (kitchen.route.peek() === from) kitchen.go(to)
  }
}
