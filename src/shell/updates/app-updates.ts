// The service worker as the page sees it: whether a newer version waits, and taking it over. The registration is asked
// at the moment of applying: what waited a minute ago may be gone.
const LOOK_EVERY_MS = 6 * 3_600_000

export type AppUpdates = { onWaiting(waits: () => void): void; apply(): Promise<void> }

/** `mayReload`: asked at the moment of reloading, never before. */
export function appUpdates(mayReload: () => boolean): AppUpdates {
  let waits = (): void => {}
  let asked = false
  // Another tab took the new version: this one goes along, but not from under a pot.
  const mayFollow = (isUpdate: boolean): boolean => asked || (isUpdate && mayReload())
  if ('serviceWorker' in navigator && import.meta.env.PROD) void watch(() => waits(), mayFollow).catch(() => {})
  return {
    onWaiting(listener) {
      waits = listener
    },
    async apply() {
      if (!mayReload()) return
      const registration = await navigator.serviceWorker.getRegistration()
      asked = true
      if (registration?.waiting) registration.waiting.postMessage({ type: 'skip-waiting' })
      else location.reload()
    }
  }
}

async function watch(waits: () => void, mayFollow: (isUpdate: boolean) => boolean): Promise<void> {
  const { Workbox } = await import('workbox-window')
  const workbox = new Workbox('./sw.js')
  workbox.addEventListener('waiting', waits)
  workbox.addEventListener('controlling', (event) => {
    if (mayFollow(event.isUpdate === true)) location.reload()
  })
  const registration = await workbox.register()
  let lookedMs = performance.now()
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || performance.now() - lookedMs < LOOK_EVERY_MS) return
    lookedMs = performance.now()
    void registration?.update().catch(() => {})
  })
}
