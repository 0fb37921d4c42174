import type { Rung, RungAlert } from '../rung.ts'

/** Changes no more than once a second: well under the three flashes a second that are safe (WCAG 2.3.1). */
const FLASH_MS = 1_000

/** The tab's title names the pot that calls and, every other second, the app. `say` gives the words for an alert. */
export function titleRung(
  name: string,
  say: (alert: RungAlert) => string,
  nowMs: () => number,
  page: { title: string } = document
): Rung {
  return {
    id: 'title',
    works: () => true,
    lamp: () => null,
    onLamp: () => () => {},
    raise(alerts) {
      const first = alerts.find(({ alert }) => !alert.soft) ?? alerts[0]
      const words = first !== undefined && Math.floor(nowMs() / FLASH_MS) % 2 === 0 ? say(first) : name
      if (page.title !== words) page.title = words
    },
    rest() {
      if (page.title !== name) page.title = name
    }
  }
}
