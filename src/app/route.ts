import { type ReadonlySignal, signal } from '@preact/signals'

const HOME = '#/stove'

/** The part of the address behind "#": any static host will do, and no address leaves the device. */
export function hashRoute(page: Window = window): { route: ReadonlySignal<string>; go(route: string): void } {
  const route = signal(page.location.hash || HOME)
  page.addEventListener('hashchange', () => {
    route.value = page.location.hash || HOME
  })
  return {
    route,
    go(next) {
      page.location.hash = next.startsWith('#') ? next : `#${next}`
      route.value = page.location.hash || HOME
    }
  }
}

/** The Stove with that pot large, and its call first. */
export function potRoute(potId: string): string {
  return `#/stove/${encodeURIComponent(potId)}`
}
