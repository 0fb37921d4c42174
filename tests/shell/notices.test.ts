import { describe, expect, it, vi } from 'vitest'
import { memoryNotices } from '../../src/shell/notices/memory-notices.ts'
import { browserNotices, type Notice, type NoticesOf } from '../../src/shell/notices/notices.ts'
import { noticesRung } from '../../src/shell/notices/notices-rung.ts'
import { type NoticePress, onPress, type PressAnswer } from '../../src/shell/notices/presses.ts'
import { call } from './calling.ts'

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

/** A rung over notices in memory, on a page that can be hidden and a clock moved by hand. */
function rungOn(notices = memoryNotices()) {
  const page = { visibilityState: 'hidden' as DocumentVisibilityState, focused: false, hasFocus: () => page.focused }
  const at = { nowMs: 0 }
  const rung = noticesRung({
    notices,
    say: ({ potId, alert }) => ({ title: `${potId}: ${alert.path}`, body: alert.urgency, actions: [] }),
    data: { of: 'store', by: 'this' },
    urlOf: (potId) => `./#/stove/${potId}`,
    nowMs: () => at.nowMs,
    page
  })
  return { rung, notices, page, at, tags: () => [...notices.standing.keys()] }
}

describe('the rung of notices', () => {
  it('shows one notice a pot while the page is hidden, with the alert it speaks of, and only once', () => {
    const { rung, notices } = rungOn()
    for (let tick = 0; tick < 20; tick++) rung.raise([call(), call({ key: 'call 9', path: 'lift' }, 'moss')])
    expect(notices.shown.map(({ title, tag, quiet }) => ({ title, tag, quiet }))).toEqual([
      { title: 'plum: acid', tag: 'store plum', quiet: false },
      { title: 'moss: lift', tag: 'store moss', quiet: false }
    ])
    expect(notices.shown[1]?.data).toEqual({
      of: 'store',
      by: 'this',
      potId: 'moss',
      key: 'call 9',
      path: 'lift',
      url: './#/stove/moss'
    })
  })

  it('speaks of the most urgent alert of a pot, and of a soft tick only when there is nothing else', () => {
    const { rung, notices } = rungOn()
    rung.raise([call({ key: 'stir', path: 'stir', soft: true }), call()])
    expect(notices.shown.map(({ data, quiet }) => [data.key, quiet])).toEqual([['call 1', false]])
    rung.raise([call({ key: 'stir', path: 'stir', soft: true })])
    expect(notices.shown.map(({ data, quiet }) => [data.key, quiet]).at(-1)).toEqual(['stir', true])
  })

  it('comes up again when the call becomes late; one that escalates again every minute, another not', () => {
    for (const [escalates, times] of [
      [true, 4],
      [false, 2]
    ] as const) {
      const { rung, notices, at } = rungOn()
      rung.raise([call({ escalates })])
      for (at.nowMs = 30_000; at.nowMs <= 150_000; at.nowMs += 250) rung.raise([call({ escalates, urgency: 'late' })])
      expect(notices.shown.map(({ body }) => body)).toEqual(['now', ...Array(times - 1).fill('late')])
    }
  })

  it('goes when the alert was answered, when the page is back, and when nothing stands any more', async () => {
    const { rung, page, tags } = rungOn()
    rung.raise([call(), call({}, 'moss')])
    rung.raise([call({}, 'moss')])
    expect(tags()).toEqual(['store moss'])
    page.visibilityState = 'visible'
    page.focused = true
    rung.raise([call({}, 'moss')])
    expect(tags()).toEqual([])
    page.visibilityState = 'hidden'
    rung.raise([call({}, 'moss')])
    expect(tags()).toEqual(['store moss'])
    rung.rest()
    expect(tags()).toEqual([])
  })

  it('does not cover a page that is looked at, but a late call also comes up where another window is worked in', () => {
    const { rung, page, tags } = rungOn()
    page.visibilityState = 'visible'
    rung.raise([call()])
    expect(tags()).toEqual([])
    rung.raise([call({ urgency: 'late' })])
    expect(tags()).toEqual(['store plum'])
    page.focused = true
    rung.raise([call({ urgency: 'late' })])
    expect(tags()).toEqual([])
  })

  it('puts away at the first look what an earlier opening of the page left', () => {
    const notices = memoryNotices()
    void notices.show({ tag: 'store slate' } as Notice)
    const { rung, tags } = rungOn(notices)
    rung.rest()
    expect(tags()).toEqual([])
  })

  it('tries again after a while what could not be shown, not at every tick', async () => {
    const notices = memoryNotices()
    const show = vi.spyOn(notices, 'show').mockResolvedValue(false)
    const { rung, at } = rungOn(notices)
    for (at.nowMs = 0; at.nowMs <= 10_000; at.nowMs += 250) {
      rung.raise([call()])
      await Promise.resolve()
    }
    expect(show).toHaveBeenCalledTimes(2)
  })

  it('says its lamp in words, and a tap asks, where asking helps', async () => {
    const notices = memoryNotices('unasked')
    const { rung } = rungOn(notices)
    const told = vi.fn()
    rung.onLamp(told)
    rung.raise([call()])
    expect(notices.shown).toEqual([])
    expect(rung.lamp()).toMatchObject({ ok: false, say: 'No notices yet: tap' })
    rung.lamp()?.tap?.()
    await turn()
    expect(told).toHaveBeenCalled()
    expect(rung.lamp()).toEqual({ ok: true, say: 'Notices ready', tap: null })
    rung.raise([call()])
    expect(notices.shown).toHaveLength(1)
    for (const [state, words] of [
      ['refused', 'settings'],
      ['none', 'shows no notices'],
      ['failed', 'do not come up']
    ] as const) {
      notices.become(state)
      expect(rung.lamp()).toMatchObject({ ok: false, say: expect.stringContaining(words), tap: null })
    }
  })
})

/** A browser with a registration whose notices can be looked at. */
function browser(permission: NotificationPermission | null = 'granted') {
  const standing: { title: string; tag: string; data: unknown; options: NotificationOptions; close(): void }[] = []
  const at = { permission, showing: Promise.resolve(), registered: true }
  let changed = (): void => {}
  const registration = {
    async showNotification(title: string, options: NotificationOptions) {
      await at.showing
      const old = standing.findIndex(({ tag }) => tag === options.tag)
      if (old >= 0) standing.splice(old, 1)
      const tag = options.tag ?? ''
      const close = (): void => void standing.splice(standing.indexOf(one), 1)
      const one = { title, tag, data: options.data, options, close }
      standing.push(one)
    },
    getNotifications: async () => [...standing]
  }
  const given: NoticesOf = {
    permission: () => at.permission,
    async request() {
      at.permission = 'granted'
      return 'granted'
    },
    registration: async () => (at.registered ? registration : null),
    onPermission: (listener) => {
      changed = listener
    }
  }
  return { at, given, standing, change: () => changed() }
}

const notice = (change: Partial<Notice> = {}, by = 'this', of = 'store'): Notice => ({
  title: 'Plum: Acid 2',
  body: 'Acid 2 in',
  tag: 'store plum',
  quiet: false,
  actions: [{ action: 'done', title: 'Done' }],
  data: { of, by, potId: 'plum', key: 'call 1', path: 'acid', url: './' },
  ...change
})

describe('notices of the browser', () => {
  it('stand until they are answered, are felt again when replaced, and a quiet one does neither', async () => {
    const { given, standing } = browser()
    const notices = browserNotices('store', 'this', given)
    expect(await notices.show(notice())).toBe(true)
    expect(standing[0]?.options).toMatchObject({
      body: 'Acid 2 in',
      requireInteraction: true,
      renotify: true,
      silent: false,
      actions: [{ action: 'done', title: 'Done' }]
    })
    await notices.show(notice({ quiet: true }))
    expect(standing).toHaveLength(1)
    expect(standing[0]?.options).toMatchObject({ requireInteraction: false, renotify: false, silent: true })
  })

  it('one that is closed while it is still being shown does not stay', async () => {
    const { at, given, standing } = browser()
    let shown = (): void => {}
    at.showing = new Promise((resolve) => {
      shown = resolve
    })
    const notices = browserNotices('store', 'this', given)
    const showing = notices.show(notice())
    const closing = notices.close('store plum')
    shown()
    await Promise.all([showing, closing])
    expect(standing).toEqual([])
  })

  it('a page that gives the pots away closes its own notice, never the one of the page that took them', async () => {
    const { given, standing } = browser()
    const old = browserNotices('store', 'old', given)
    const next = browserNotices('store', 'next', given)
    await old.show(notice({}, 'old'))
    await next.show(notice({}, 'next'))
    await old.close('store plum')
    expect(standing).toHaveLength(1)
    await next.close('store plum')
    expect(standing).toEqual([])
  })

  it('clearing away spares the notices of a rehearsal beside the real pots', async () => {
    const { given, standing } = browser()
    await browserNotices('rehearsal', 'r', given).show(notice({ tag: 'rehearsal plum' }, 'r', 'rehearsal'))
    const notices = browserNotices('store', 'this', given)
    await notices.show(notice({}, 'long ago'))
    await notices.closeAll()
    expect(standing.map(({ tag }) => tag)).toEqual(['rehearsal plum'])
  })

  it('say of themselves how they stand: unasked, refused, none, failed, and well again', async () => {
    const { at, given, change } = browser('default')
    const notices = browserNotices('store', 'this', given)
    const told = vi.fn()
    notices.onState(told)
    expect(notices.state()).toBe('unasked')
    await notices.ask()
    expect([notices.state(), told.mock.calls.length]).toEqual(['ready', 1])
    at.permission = 'denied'
    change()
    expect([notices.state(), told.mock.calls.length]).toEqual(['refused', 2])
    at.permission = 'granted'
    at.registered = false
    expect(await notices.show(notice())).toBe(false)
    expect(notices.state()).toBe('failed')
    at.registered = true
    at.showing = Promise.reject(new TypeError('no'))
    expect(await notices.show(notice())).toBe(false)
    at.showing = Promise.resolve()
    expect(await notices.show(notice())).toBe(true)
    expect(notices.state()).toBe('ready')
    at.permission = null
    expect(notices.state()).toBe('none')
  })
})

/** A worker's message to the page, and what is answered. */
async function pressed(answer: (press: NoticePress) => Promise<PressAnswer>, data: unknown): Promise<unknown[]> {
  const answers: unknown[] = []
  let hear = (_event: MessageEvent): void => {}
  const worker = {
    addEventListener: (_type: string, listener: (event: MessageEvent) => void) => {
      hear = listener
    },
    startMessages: vi.fn()
  } as unknown as ServiceWorkerContainer
  onPress(answer, worker)
  expect(worker.startMessages).toHaveBeenCalled()
  hear({ data, ports: [{ postMessage: (given: unknown) => answers.push(given) }] } as unknown as MessageEvent)
  await turn()
  return answers
}

describe('a press that the worker tells of', () => {
  it('is answered once, and a fault of the page sends somebody to look', async () => {
    expect(await pressed(async () => 'acted', { type: 'notice-pressed' })).toEqual(['acted'])
    expect(await pressed(() => Promise.reject(new Error('broken')), { type: 'notice-pressed' })).toEqual(['look'])
  })

  it('no other message is taken for one', async () => {
    const answer = vi.fn()
    for (const data of [null, 'x', { type: 'CACHE_UPDATED' }]) expect(await pressed(answer, data)).toEqual([])
    expect(answer).not.toHaveBeenCalled()
  })

  it('where there is no worker, nothing breaks', () => {
    expect(() => onPress(async () => 'acted', null)).not.toThrow()
  })
})
