import type { Rung, RungAlert, RungLamp } from '../rung.ts'
import type { Notice, NoticeData, Notices, NoticesState } from './notices.ts'

/** A late call with acid or heat at stake comes up again this often: the first one may have been wiped away. */
const AGAIN_MS = 60_000
/** What could not be shown is tried again no sooner: a refusal that stands would be asked for many times a second. */
const RETRY_MS = 10_000

export type NoticeSay = Pick<Notice, 'title' | 'body' | 'actions'>

export type NoticesRungParts = {
  notices: Notices
  say: (alert: RungAlert) => NoticeSay
  data: Pick<NoticeData, 'of' | 'by'>
  /** The address of the app with this pot shown. */
  urlOf: (potId: string) => string
  /** Real time, monotonic. */
  nowMs: () => number
  page?: { visibilityState: DocumentVisibilityState; hasFocus(): boolean }
}

type Showing = { name: string; atMs: number; ok: boolean }

/** Notices come where the page is hidden, and for a late call also where the page is seen but another window is worked
 * in: over a page in hand they would only cover its pads. One for each pot, of its most urgent alert; gone as soon as
 * the alert is, or the page is back. */
export function noticesRung(parts: NoticesRungParts): Rung {
  const { notices, nowMs, page = document } = parts
  const showing = new Map<string, Showing>()
  let first = true
  const clearOld = (): void => {
    // What an earlier opening of the page left behind speaks of alerts that may be long answered.
    if (first) void notices.closeAll()
    first = false
  }
  const close = (potId: string): void => {
    showing.delete(potId)
    void notices.close(tagOf(parts.data.of, potId))
  }
  return {
    id: 'notices',
    works: () => notices.state() === 'ready' && page.visibilityState !== 'visible',
    lamp: () => lampOf(notices),
    onLamp: notices.onState,
    raise(alerts) {
      clearOld()
      const allowed = notices.state() === 'ready' || notices.state() === 'failed'
      const wanted = allowed ? mostUrgent(alerts.filter((one) => isWanted(one, page))) : []
      for (const potId of showing.keys()) if (!wanted.some((one) => one.potId === potId)) close(potId)
      for (const one of wanted) {
        const name = `${one.alert.key} ${one.alert.urgency}`
        if (!isDue(showing.get(one.potId), name, one, nowMs())) continue
        const now: Showing = { name, atMs: nowMs(), ok: true }
        showing.set(one.potId, now)
        void notices.show(noticeOf(parts, one)).then((ok) => {
          now.ok = ok
        })
      }
    },
    rest() {
      clearOld()
      for (const potId of showing.keys()) close(potId)
    }
  }
}

function isWanted({ alert }: RungAlert, page: NonNullable<NoticesRungParts['page']>): boolean {
  return page.visibilityState !== 'visible' || (alert.urgency === 'late' && !page.hasFocus())
}

/** The first of each pot that is no soft tick: alerts come with the most urgent of a pot first. */
function mostUrgent(alerts: readonly RungAlert[]): RungAlert[] {
  const pots = [...new Set(alerts.map(({ potId }) => potId))]
  return pots.flatMap((potId) => {
    const own = alerts.filter((one) => one.potId === potId)
    return own.find(({ alert }) => !alert.soft) ?? own[0] ?? []
  })
}

function isDue(last: Showing | undefined, name: string, { alert }: RungAlert, nowMs: number): boolean {
  if (last === undefined || last.name !== name) return true
  if (!last.ok) return nowMs - last.atMs >= RETRY_MS
  return alert.escalates && alert.urgency === 'late' && nowMs - last.atMs >= AGAIN_MS
}

function noticeOf({ say, data, urlOf }: NoticesRungParts, one: RungAlert): Notice {
  const { potId, alert } = one
  const { key, path } = alert
  const quiet = alert.soft || alert.urgency === 'soon'
  return { ...say(one), tag: tagOf(data.of, potId), quiet, data: { ...data, potId, key, path, url: urlOf(potId) } }
}

function tagOf(of: string, potId: string): string {
  return `${of} ${potId}`
}

/** Short: on a phone a lamp that is out stands over the strands, and two lines are what there is room for. */
const says: Record<NoticesState, string> = {
  ready: 'Notices ready',
  unasked: 'No notices yet: tap',
  refused: "Notices refused in the browser's settings",
  none: 'This browser shows no notices',
  failed: 'Notices do not come up here'
}

function lampOf(notices: Notices): RungLamp {
  const state = notices.state()
  return { ok: state === 'ready', say: says[state], tap: state === 'unasked' ? () => void notices.ask() : null }
}
