import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Kitchen } from '../../src/ui/kitchen.ts'
import { startPot } from './stage/dyer.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { pressUntilGone } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

type Handle = { strandlineRehearsal: { kitchen: Kitchen } }

/** What a browser or a person can refuse, by rung. Runs before the page: it holds nothing of ours. */
const refuse: Record<string, () => void> = {
  sound: () => {
    const Real = globalThis.AudioContext
    globalThis.AudioContext = class extends Real {
      constructor() {
        super()
        throw new DOMException('no output device', 'NotSupportedError')
      }
    }
  },
  screen: () => {
    navigator.wakeLock.request = () => Promise.reject(new DOMException('refused', 'NotAllowedError'))
  },
  notices: () => {
    Object.defineProperty(Notification, 'permission', { get: () => 'denied' })
  },
  speech: () => {
    Object.defineProperty(globalThis, 'speechSynthesis', { value: undefined })
  },
  vibration: () => {
    navigator.vibrate = () => false
  },
  badge: () => {
    const refused = (): Promise<void> => Promise.reject(new DOMException('refused', 'NotAllowedError'))
    Object.assign(navigator, { setAppBadge: refused, clearAppBadge: refused })
  },
  battery: () => {
    Object.assign(navigator, { getBattery: () => Promise.reject(new DOMException('refused', 'NotAllowedError')) })
  },
  storage: () => {
    navigator.storage.persisted = () => Promise.resolve(false)
    navigator.storage.persist = () => Promise.resolve(false)
  },
  microphone: () => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('refused', 'NotAllowedError'))
  }
}

/** What its lamp says then; null: it has none, the rest must go on all the same. */
const words: Record<keyof typeof refuse, [lamp: string, say: RegExp] | null> = {
  sound: ['sound', /sound/i],
  screen: ['screen', /may sleep/],
  notices: ['notices', /refused in the browser/],
  speech: ['speech', /No voice on this device/],
  vibration: null,
  badge: null,
  battery: null,
  storage: null,
  microphone: ['whistle', /microphone/i]
}

/** A pot that calls in such a browser: what the lamps say, and by what the call could be noticed. */
async function calling(names: string[]) {
  const visit = await stage.visit()
  const { page, context, complaints } = visit
  for (const name of names) await context.addInitScript(refuse[name] as () => void)
  await page.goto(`${stage.host.address}?rehearse=600`)
  await page.waitForFunction(() => (globalThis as unknown as Handle).strandlineRehearsal?.kitchen.whistle.value)
  await page.evaluate(() =>
    (globalThis as unknown as Handle).strandlineRehearsal.kitchen.changeSettings({ voice: 'calls', whistle: true })
  )
  await startPot(page, { title: 'Level immersion', colourway: 'Plum', massG: 100 })
  await pressUntilGone(page.locator('.call').getByRole('button', { name: /in soak/ }), page.locator('.call'))
  // The soak is over three seconds later: the next call.
  await page.locator('.call').waitFor({ timeout: 120_000 })
  const last = (await raised(page)).at(-1)
  const lamps = await page.evaluate(() =>
    (globalThis as unknown as Handle).strandlineRehearsal.kitchen.lamps.value.map(({ id, ok, say }) => ({
      id,
      ok,
      say
    }))
  )
  // It says the call and its own name by turns.
  const title = await page
    .waitForFunction(() => document.title.includes('Plum') && document.title)
    .then((held) => held.jsonValue())
  await context.close()
  return { told: last?.told ?? [], lamps, title, complaints }
}

async function raised(page: Page) {
  const { entries } = await storedIn(page, REHEARSAL)
  return entries.flatMap(({ event }) => (event.type === 'AlertRaised' && event.kind === 'call' ? [event] : []))
}

describe('a browser that refuses one way of calling', () => {
  it.each(Object.keys(refuse))(
    '%s: its lamp says so, and a pot calls by the others, as the record says',
    async (name) => {
      const { told, lamps, title, complaints } = await calling([name])
      // A screen that may go dark is still seen until it does.
      if (name !== 'screen') expect(told).not.toContain(name)
      for (const other of ['sound', 'screen', 'title']) if (other !== name) expect(told, other).toContain(other)
      expect(title).toMatch(/Plum/)
      const lamp = words[name]
      if (lamp)
        expect(lamps.find(({ id }) => id === lamp[0])).toMatchObject({ ok: false, say: expect.stringMatching(lamp[1]) })
      expect(complaints).toEqual([])
    }
  )
})

describe('a browser that refuses them all', () => {
  it('still calls on the screen and in the title, and the record says that nothing else did', async () => {
    const { told, lamps, title, complaints } = await calling(Object.keys(refuse))
    expect(told).toEqual(['screen', 'title'])
    expect(title).toMatch(/Plum/)
    for (const lamp of Object.values(words)) {
      if (lamp)
        expect(lamps.find(({ id }) => id === lamp[0])).toMatchObject({ ok: false, say: expect.stringMatching(lamp[1]) })
    }
    expect(complaints).toEqual([])
  })
})
