// Notices of the system, shown through the service worker's registration: they stand outside the page, on a lock screen
// and on a watch, and have buttons of their own.
export type NoticeAction = { action: 'done' | 'later' | 'open'; title: string }

export type NoticeData = {
  /** Whose it is: a rehearsal and the real pots may both be open. */
  of: string
  /** The opening of the page that showed it. */
  by: string
  potId: string
  /** The alert it speaks of: a press counts only while that one stands. */
  key: string
  path: string | null
  /** Where to open the app when no page of it is open. */
  url: string
}

export type Notice = {
  title: string
  body: string
  /** One notice a pot: a later one takes the place of the one before. */
  tag: string
  /** Shown without sound and without standing until it is answered. */
  quiet: boolean
  actions: NoticeAction[]
  data: NoticeData
}

/** 'none': this browser knows no notices. 'failed': allowed, and yet the last one could not be shown. */
export type NoticesState = 'ready' | 'unasked' | 'refused' | 'none' | 'failed'

export type Notices = {
  state(): NoticesState
  /** Call inside a tap only: browsers refuse for good what was asked without one. */
  ask(): Promise<void>
  /** False: it could not be shown. */
  show(notice: Notice): Promise<boolean>
  /** Closes the notices that this opening of the page showed under the tag. */
  close(tag: string): Promise<void>
  /** Closes all notices, also those of an earlier opening. */
  closeAll(): Promise<void>
  onState(changed: () => void): () => void
}

type Shown = { tag: string; data: unknown; close(): void }

/** The parts of the browser that are used. `permission` null: there are no notices. */
export type NoticesOf = {
  permission(): NotificationPermission | null
  request(): Promise<unknown>
  registration(): Promise<{
    showNotification(title: string, options: NotificationOptions): Promise<void>
    getNotifications(): Promise<Shown[]>
  } | null>
  onPermission(changed: () => void): void
}

export function browserNotices(of: string, by: string, given: NoticesOf = noticesOfBrowser()): Notices {
  let failed = false
  const listeners = new Set<() => void>()
  const tell = (): void => {
    for (const listener of listeners) listener()
  }
  given.onPermission(tell)
  // In turn: a notice that is closed while it is still being shown would stand for ever.
  let before: Promise<unknown> = Promise.resolve()
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const done = before.then(work)
    before = done.catch(() => {})
    return done
  }
  const fail = (now: boolean): void => {
    if (failed === now) return
    failed = now
    tell()
  }
  const closeWhere = (which: (tag: string, data: NoticeData) => boolean): Promise<void> =>
    inTurn(async () => {
      const shown = (await (await given.registration())?.getNotifications()) ?? []
      for (const one of shown) if (isOurs(one.data, of) && which(one.tag, one.data)) one.close()
    }).catch(() => {})
  return {
    state() {
      const permission = given.permission()
      if (permission === null) return 'none'
      if (permission !== 'granted') return permission === 'denied' ? 'refused' : 'unasked'
      return failed ? 'failed' : 'ready'
    },
    async ask() {
      await given.request().catch(() => {})
      tell()
    },
    show: (notice) =>
      inTurn(async () => {
        const registration = await given.registration()
        await registration?.showNotification(notice.title, optionsOf(notice))
        fail(registration === null)
        return registration !== null
      }).catch(() => {
        fail(true)
        return false
      }),
    close: (tag) => closeWhere((shown, data) => shown === tag && data.by === by),
    closeAll: () => closeWhere(() => true),
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}

function isOurs(data: unknown, of: string): data is NoticeData {
  return typeof data === 'object' && data !== null && (data as NoticeData).of === of
}

/** Buttons and `renotify` are not in every browser; those that lack them pass over them. */
function optionsOf({ body, tag, quiet, actions, data }: Notice): NotificationOptions {
  const more = { actions, renotify: !quiet }
  return { body, tag, data, silent: quiet, requireInteraction: !quiet, icon: './icon-192.png', ...more }
}

function noticesOfBrowser(): NoticesOf {
  const here = globalThis as { Notification?: typeof Notification }
  const { serviceWorker } = navigator as { serviceWorker?: ServiceWorkerContainer }
  const read = (): NotificationPermission | null =>
    serviceWorker === undefined ? null : (here.Notification?.permission ?? null)
  // The lamps ask with each tick, and the page stands still while the browser's other process answers: so it is read when
  // it may have changed, and not every browser tells that it has.
  let permission = read()
  const again = (): void => {
    permission = read()
  }
  document.addEventListener('visibilitychange', again)
  return {
    permission: () => permission,
    request: async () => {
      await here.Notification?.requestPermission()
      again()
    },
    async registration() {
      const registration = await serviceWorker?.getRegistration()
      return registration?.active ? registration : null
    },
    onPermission(changed) {
      const asked = navigator.permissions?.query({ name: 'notifications' })
      const told = (): void => {
        again()
        changed()
      }
      asked?.then((status) => status.addEventListener('change', told)).catch(() => {})
    }
  }
}
