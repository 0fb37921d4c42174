// A pressed notice goes to the page that owns the pots; nothing is written here. The page's side is
// src/shell/notices/presses.ts.

type NoticeData = { of: string; potId: string; key: string; path: string | null; url: string }

/** What is used of a page's window, of all of them, and of the notice. */
export type PageWindow = { postMessage(message: unknown, transfer: MessagePort[]): void; focus(): Promise<unknown> }
export type Windows = {
  matchAll(options: { type: 'window'; includeUncontrolled: boolean }): Promise<readonly PageWindow[]>
  openWindow(url: string): Promise<unknown>
}
export type Pressed = { action: string; notification: { data: unknown; close(): void } }

type Answer = 'acted' | 'look' | 'follows' | 'other'
type Asked = { window: PageWindow; answer: Promise<Answer>; given: Answer | null }

/** A page that is hidden but awake answers in milliseconds; a write takes some more. */
const PATIENCE_MS = 3_000
/** A frozen page that is brought to the front by this press may still act on it, but not on one of long ago. */
const VALID_MS = 10_000

const actions = ['done', 'later']

export async function takePress(pressed: Pressed, windows: Windows, patienceMs = PATIENCE_MS): Promise<void> {
  const { notification } = pressed
  if (!isNoticeData(notification.data)) {
    notification.close()
    return
  }
  const asked = ask(await windows.matchAll({ type: 'window', includeUncontrolled: true }), pressed)
  const owner = await ownerOf(asked, patienceMs)
  // A notice whose press led nowhere stands on: it is all that still calls.
  if (owner?.given === 'acted' || (await bringUp(owner, asked, windows, notification.data.url))) notification.close()
}

/** To the owner, which has to be looked at; to one that does not answer, for a frozen owner can't; to a page that
 * follows; and where none of them is open or comes to the front, to a new one. */
async function bringUp(owner: Asked | null, asked: Asked[], windows: Windows, url: string): Promise<boolean> {
  const front = owner ?? byAnswer(asked, null) ?? byAnswer(asked, 'follows')
  const seen = await front?.window.focus().catch(() => null)
  return (seen ?? (await windows.openWindow(url).catch(() => null))) !== null
}

/** Every open page is asked: only the pages themselves know which of them owns. */
function ask(windows: readonly PageWindow[], { action, notification }: Pressed): Asked[] {
  const { of, potId, key, path } = notification.data as NoticeData
  const press = {
    type: 'notice-pressed',
    pressId: crypto.randomUUID(),
    action: actions.includes(action) ? action : 'open',
    ...{ of, potId, key, path },
    untilMs: Date.now() + VALID_MS
  }
  return windows.map((window) => {
    const { port1, port2 } = new MessageChannel()
    const asked: Asked = { window, given: null, answer: Promise.resolve('other') }
    asked.answer = new Promise((resolve) => {
      port1.onmessage = ({ data }) => {
        asked.given = data as Answer
        port1.close()
        resolve(data as Answer)
      }
    })
    window.postMessage(press, [port2])
    return asked
  })
}

/** The first that says it is the owner; null: all others have answered, or nobody did in time. */
function ownerOf(asked: Asked[], patienceMs: number): Promise<Asked | null> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(null), patienceMs)
    const end = (owner: Asked | null): void => {
      clearTimeout(timer)
      resolve(owner)
    }
    for (const one of asked) {
      void one.answer.then((answer) => {
        if (answer === 'acted' || answer === 'look') end(one)
      })
    }
    void Promise.all(asked.map(({ answer }) => answer)).then(() => end(null))
  })
}

function byAnswer(asked: Asked[], given: Answer | null): Asked | undefined {
  return asked.find((one) => one.given === given)
}

function isNoticeData(data: unknown): data is NoticeData {
  const { of, potId, key, url } = (data ?? {}) as Partial<NoticeData>
  return [of, potId, key, url].every((part) => typeof part === 'string')
}
