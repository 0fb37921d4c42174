// No browser without a screen has a voice: the page is given one that writes down what it is told to say. Everything
// between the pots and that voice is the app as it ships.
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answerAll } from './stage/answers.ts'
import { startPot } from './stage/dyer.ts'
import type { WithHandle } from './stage/fast-clock.ts'
import { press } from './stage/press.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

type Said = { text: string; volume: number; whileSpeaking: boolean }
type WithSpeech = { said: Said[] }

/** Runs in the page before the app. A word takes it 60 ms; one voice is local, one is not. */
function giveVoice(): void {
  const said: Said[] = []
  let speaking = false
  let timer = 0
  const voices = [
    { lang: 'en-GB', name: 'far', localService: false, default: true },
    { lang: 'en-GB', name: 'near', localService: true, default: false }
  ]
  class Utterance {
    text: string
    voice: { name: string } | null = null
    volume = 1
    onstart: ((event: object) => void) | null = null
    onend: ((event: object) => void) | null = null
    onerror = null
    constructor(text: string) {
      this.text = text
    }
  }
  const speech = {
    pending: false,
    get speaking() {
      return speaking
    },
    getVoices: () => voices,
    addEventListener() {},
    resume() {},
    cancel() {
      clearTimeout(timer)
      speaking = false
    },
    speak(utterance: Utterance) {
      const by = utterance.voice?.name === 'near' ? '' : ' (by a voice that is not on the device)'
      said.push({ text: utterance.text + by, volume: utterance.volume, whileSpeaking: speaking })
      speaking = true
      setTimeout(() => utterance.onstart?.({}), 0)
      timer = window.setTimeout(() => {
        speaking = false
        utterance.onend?.({})
      }, 60 * utterance.text.split(' ').length)
    }
  }
  Object.defineProperty(window, 'speechSynthesis', { value: speech })
  Object.assign(window, { SpeechSynthesisUtterance: Utterance, said })
}

/** Fast while nobody is wanted, less so while a pot calls, and in real time from twelve seconds before an act on: nobody counts faster. */
function runToTheCues(page: Page): Promise<void> {
  return page.evaluate(() => {
    const { kitchen, clock } = (globalThis as unknown as WithHandle).strandlineRehearsal
    setInterval(() => {
      const pots = kitchen.pots.value
      const calls = pots.some(({ alerts }) => alerts.some(({ kind }) => kind !== 'headsUp'))
      const dues = pots.flatMap(({ state }) =>
        state.status !== 'running'
          ? []
          : state.active.flatMap(({ path, dueAtMs }) =>
              // A cue comes before the end of a wait; what a person ends has none.
              dueAtMs === null ? [] : [/(?:hold|soak)$/.test(path) ? dueAtMs - 12_000 : dueAtMs]
            )
      )
      const leftMs = Math.min(...dues.filter((atMs) => atMs > clock.nowMs() - 12_000)) - clock.nowMs()
      clock.runAt(Number.isFinite(leftMs) ? Math.min(calls ? 15 : 3_600, Math.max(1, leftMs / 500)) : 1)
    }, 50)
  })
}

async function choose(page: Page, name: string): Promise<void> {
  const pad = page.getByRole('button', { name, exact: true })
  await press(pad, async () => (await pad.getAttribute('aria-pressed')) === 'true')
}

async function settings(page: Page): Promise<void> {
  await page.evaluate(() => {
    location.hash = '#/settings'
  })
  await page.getByRole('heading', { name: 'Settings' }).waitFor()
}

const saidIn = (page: Page): Promise<Said[]> => page.evaluate(() => (globalThis as unknown as WithSpeech).said)

let stage: Stage
let visit: Visit

beforeAll(async () => {
  stage = await openStage()
  visit = await stage.visit()
  await visit.page.addInitScript(giveVoice)
  await visit.page.goto(`${stage.host.address}?rehearse=1`)
  await visit.page.locator('.stove').waitFor()
})
afterAll(() => stage?.close())

describe('two pots and a voice', () => {
  it('is silent until it is chosen, and says its example on trial', async () => {
    const { page } = visit
    await settings(page)
    expect(await saidIn(page)).toEqual([])
    await choose(page, 'On the screen only')
    await choose(page, 'Guide')
    await press(page.getByRole('button', { name: 'Try the voice' }), async () =>
      (await saidIn(page)).some(({ text }) => text === 'Plum. Acid two. Thirty millilitres of vinegar.')
    )
    await page.getByText(/^Said\./).waitFor()
    expect((await saidIn(page))[0]).toEqual({ text: 'a', volume: 0, whileSpeaking: false })
  })

  it('calls each by its colourway with act and amount, counts the bands down, and never says two at once', async () => {
    const { page } = visit
    const values = { 'How many bands are tied off?': '2', 'How long after each band?': '1 min' }
    await startPot(page, { title: 'Dip gradient', colourway: 'Plum', massG: 40, values })
    await startPot(page, { title: 'Dip gradient', colourway: 'Moss', massG: 60, values })
    // Four calls stand, two of each pot, and nobody answers yet: each is said in its turn.
    const first = [
      'Plum. Skein into the soak.',
      'Plum. Fill the bath. Eight hundred millilitres of water.',
      'Moss. Skein into the soak.',
      'Moss. Fill the bath. One point two litres of water.'
    ]
    await page.waitForFunction(
      (all) => all.every((text) => (globalThis as unknown as WithSpeech).said.some((each) => each.text === text)),
      first
    )
    await runToTheCues(page)
    const band = /^(?:Plum|Moss)\. Band two of two\. Lower/
    const counted = /Three\. Two\. One\. Lower\.$/
    const isSaid = async (wanted: RegExp): Promise<boolean> =>
      (await saidIn(page)).some(({ text }) => wanted.test(text))
    await answerAll(
      page,
      () => 'clear',
      async () => (await isSaid(band)) && (await isSaid(counted))
    )
    const said = (await saidIn(page)).slice(2)
    expect(said.filter(({ whileSpeaking }) => whileSpeaking)).toEqual([])
    for (const { text } of said) expect(text).toMatch(/^(?:(?:Plum|Moss)\. )?[A-Z][A-Za-z ,.?’-]+$/)
    expect(visit.complaints).toEqual([])
  })

  it('says so where the device has no voice, as this browser has none of its own', async () => {
    const { page, complaints, context } = await stage.visit()
    await page.goto(`${stage.host.address}?rehearse=1`)
    await page.locator('.stove').waitFor()
    await settings(page)
    await choose(page, 'Calls')
    await press(page.getByRole('button', { name: 'Try the voice' }), () =>
      page.getByText(/^No voice spoke\./).isVisible()
    )
    await page.evaluate(() => {
      location.hash = '#/stove'
    })
    await page.locator('.lamps').getByText('No voice on this device: sounds and the screen only').waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})
