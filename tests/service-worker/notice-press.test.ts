import { describe, expect, it, vi } from 'vitest'
import { type Pressed, takePress } from '../../src/service-worker/notice-press.ts'

const QUICK_MS = 60

type Told = { pressId: string; action: string; potId: string; key: string; untilMs: number }

/** An open page that answers so; null: it is frozen and says nothing. */
function page(answer: string | null, focuses = true) {
  const told: Told[] = []
  return {
    told,
    postMessage(message: unknown, [port]: MessagePort[]) {
      told.push(message as Told)
      if (answer !== null) port?.postMessage(answer)
    },
    focus: vi.fn(() => (focuses ? Promise.resolve({}) : Promise.reject(new DOMException('no', 'InvalidAccessError'))))
  }
}

const data = { of: 'store', by: 'b', potId: 'plum', key: 'call 1', path: 'acid', url: './#/stove/plum' }

async function press(pages: ReturnType<typeof page>[], action = 'done', given: unknown = data, opens = true) {
  const close = vi.fn()
  const pressed: Pressed = { action, notification: { data: given, close } }
  const openWindow = vi.fn((_url: string) => (opens ? Promise.resolve({}) : Promise.reject(new Error('not now'))))
  await takePress(pressed, { matchAll: async () => pages, openWindow }, QUICK_MS)
  return { close, openWindow, focused: pages.map(({ focus }) => focus.mock.calls.length) }
}

describe('a pressed notice', () => {
  it('goes to every open page with the same id, and when the owner acted no page comes to the front', async () => {
    const pages = [page('follows'), page('acted'), page('other')]
    const { close, openWindow, focused } = await press(pages)
    expect(pages.map(({ told }) => told.length)).toEqual([1, 1, 1])
    expect(new Set(pages.map(({ told }) => told[0]?.pressId)).size).toBe(1)
    expect(pages[1]?.told[0]).toMatchObject({ action: 'done', potId: 'plum', key: 'call 1' })
    expect(focused).toEqual([0, 0, 0])
    expect(openWindow).not.toHaveBeenCalled()
    expect(close).toHaveBeenCalled()
  })

  it('two presses have two ids, and each holds for ten seconds only', async () => {
    const one = page('acted')
    await press([one])
    await press([one], 'later')
    expect(one.told[0]?.pressId).not.toBe(one.told[1]?.pressId)
    expect(one.told[1]?.action).toBe('later')
    for (const { untilMs } of one.told) {
      expect(untilMs - Date.now()).toBeGreaterThan(8_000)
      expect(untilMs - Date.now()).toBeLessThanOrEqual(10_000)
    }
  })

  it('brings the owner to the front when it has to be looked at, not the page that follows', async () => {
    const { focused, openWindow, close } = await press([page('follows'), page('look')])
    expect(focused).toEqual([0, 1])
    expect(openWindow).not.toHaveBeenCalled()
    expect(close).toHaveBeenCalled()
  })

  it('brings a page that does not answer to the front: the owner may be frozen', async () => {
    expect((await press([page('follows'), page(null)])).focused).toEqual([0, 1])
  })

  it('does not wait for its patience to end when all have said that they do not own', async () => {
    const began = performance.now()
    await takePress(
      { action: '', notification: { data, close() {} } },
      { matchAll: async () => [page('follows')], openWindow: async () => ({}) },
      30_000
    )
    expect(performance.now() - began).toBeLessThan(15_000)
  })

  it('opens the app with the pot shown when no page of these pots is open', async () => {
    expect((await press([])).openWindow.mock.calls).toEqual([['./#/stove/plum']])
    expect((await press([page('other')])).openWindow).toHaveBeenCalled()
  })

  it('opens the app when the page can not be brought to the front', async () => {
    expect((await press([page('look', false)])).openWindow).toHaveBeenCalled()
  })

  it('stays when its press led nowhere: it is all that still calls', async () => {
    expect((await press([page('look', false)], 'done', data, false)).close).not.toHaveBeenCalled()
  })

  it('a press beside the buttons only asks for a look', async () => {
    const one = page('look')
    await press([one], '')
    await press([one], 'something')
    expect(one.told.map(({ action }) => action)).toEqual(['open', 'open'])
  })

  it('a notice that is none of ours is only closed', async () => {
    const one = page('acted')
    for (const strange of [null, 'x', { potId: 'plum' }]) {
      expect((await press([one], 'done', strange)).close).toHaveBeenCalled()
    }
    expect(one.told).toEqual([])
  })
})
