// The ear in real Chromium, with a sound file for a microphone.
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchChromium } from '../../../src/desk/bench/chromium.ts'
import { chanceOf } from '../../whistle-corpus/chance.ts'
import { levelOf, RATE_HZ } from '../../whistle-corpus/filters.ts'
import { plain } from '../../whistle-corpus/plain.ts'
import { talkLike } from '../../whistle-corpus/sounds/talk-like.ts'
import { wavOf } from '../../whistle-corpus/wav.ts'
import { whistleOf } from '../../whistle-corpus/whistle.ts'
import { builtEar, type EarBuilt } from './built.ts'
import type { EarPage } from './page.ts'

type WithPage = { earPage: EarPage }

const silence = (sec: number): Float32Array => new Float32Array(Math.round(sec * RATE_HZ))
const rise = (): Float32Array =>
  whistleOf({ ...plain, glideSec: 0.6, kind: 'rise', fromHz: 1_100 }, chanceOf(1)).map((each) => each * 0.1)
const fall = (): Float32Array =>
  whistleOf({ ...plain, glideSec: 0.6, kind: 'fall', fromHz: 1_900 }, chanceOf(2)).map((each) => each * 0.1)
const talk = (): Float32Array => {
  const said = talkLike(chanceOf(5), 4)
  return said.map((each) => (each * 0.08) / levelOf(said))
}

const joined = (pieces: Float32Array[]): Float32Array => Float32Array.from(pieces.flatMap((piece) => [...piece]))

let built: EarBuilt
let folder: string
beforeAll(async () => {
  built = await builtEar()
  folder = await mkdtemp(join(tmpdir(), 'strandline-mic-'))
})
afterAll(async () => {
  await built.stop()
  await rm(folder, { recursive: true, force: true })
})

/** Chromium with that sound for a microphone, on the ear's page. */
async function withMicrophone(
  pieces: Float32Array[],
  act: (page: Page, complaints: string[]) => Promise<void>
): Promise<void> {
  const file = join(folder, 'microphone.wav')
  await writeFile(file, wavOf(joined(pieces), RATE_HZ))
  const browser: Browser = await launchChromium(process.env.CHROME_PATH, [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${file}%noloop`
  ])
  try {
    const page = await browser.newPage()
    const complaints: string[] = []
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
    page.on('pageerror', (error) => complaints.push(error.message))
    await page.goto(built.address)
    await page.waitForFunction(() => 'earPage' in globalThis)
    await act(page, complaints)
  } finally {
    await browser.close()
  }
}

const start = (page: Page): Promise<boolean> =>
  page.evaluate(() => (globalThis as unknown as WithPage).earPage.ear.start())

const heardOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => (globalThis as unknown as WithPage).earPage.heard)

const untilHeard = (page: Page, count: number): Promise<unknown> =>
  page.waitForFunction((wanted) => (globalThis as unknown as WithPage).earPage.heard.length >= wanted, count)

describe('the ear in a browser', () => {
  it('hears a rise as a rise and a fall as a fall, and nothing in silence and talk', async () => {
    await withMicrophone(
      [silence(1), talk(), silence(1), rise(), silence(1), fall(), silence(1)],
      async (page, complaints) => {
        expect(await start(page)).toBe(true)
        await untilHeard(page, 2)
        // Whatever was taken for a whistle in the talk before would stand in front.
        expect(await heardOn(page)).toEqual(['rise', 'fall'])
        expect(complaints).toEqual([])
      }
    )
  })

  it('asks for the bare sound of the microphone, says that it listens, and closes it again', async () => {
    await withMicrophone([silence(1)], async (page) => {
      expect(await start(page)).toBe(true)
      const on = await page.evaluate(() => {
        const { ear, tracks } = (globalThis as unknown as WithPage).earPage
        const { echoCancellation, noiseSuppression, autoGainControl } = tracks[0]?.getSettings() ?? {}
        return {
          state: ear.state(),
          said: ear.say(),
          settings: { echoCancellation, noiseSuppression, autoGainControl },
          live: tracks.map((track) => track.readyState)
        }
      })
      expect(on).toEqual({
        state: 'listening',
        said: 'Listening: a rising whistle for done, a falling one to hear it again.',
        settings: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
        live: ['live']
      })
      const off = await page.evaluate(() => {
        const { ear, tracks, states } = (globalThis as unknown as WithPage).earPage
        ear.stop()
        return { state: ear.state(), live: tracks.map((track) => track.readyState), states }
      })
      expect(off).toEqual({ state: 'off', live: ['ended'], states: ['asking', 'listening', 'off'] })
    })
  })

  it('is deaf while the app sounds, and hears again after it', async () => {
    await withMicrophone([silence(1), rise(), silence(2), fall(), silence(1)], async (page) => {
      expect(await start(page)).toBe(true)
      // The rise lies from 1.0 to 1.7 s: over before the ear hears again.
      await page.evaluate(() => (globalThis as unknown as WithPage).earPage.ear.deafFor(2_000))
      await untilHeard(page, 1)
      expect(await heardOn(page)).toEqual(['fall'])
    })
  })

  it('says so when the microphone is gone', async () => {
    await withMicrophone([silence(1)], async (page) => {
      expect(await start(page)).toBe(true)
      const said = await page.evaluate(() => {
        const { ear, tracks } = (globalThis as unknown as WithPage).earPage
        // The browser tells of a track that ended by itself in this way; `stop` by the page tells nothing.
        tracks[0]?.dispatchEvent(new Event('ended'))
        return { state: ear.state(), said: ear.say() }
      })
      expect(said).toEqual({ state: 'broken', said: 'The microphone is gone: unplugged, or no longer allowed.' })
    })
  })

  it('says so when the microphone is refused', async () => {
    const browser = await launchChromium(process.env.CHROME_PATH, ['--use-fake-device-for-media-stream'])
    try {
      const context = await browser.newContext({ permissions: [] })
      const page = await context.newPage()
      await page.goto(built.address)
      await page.waitForFunction(() => 'earPage' in globalThis)
      expect(await start(page)).toBe(false)
      const said = await page.evaluate(() => {
        const { ear } = (globalThis as unknown as WithPage).earPage
        return { state: ear.state(), said: ear.say() }
      })
      expect(said.state).toBe('refused')
      expect(said.said).toMatch(/not allowed/)
    } finally {
      await browser.close()
    }
  })
})

it('the recogniser comes as a script of its own beside the app, with its content in its name', async () => {
  const files = await readdir(join(built.folder, 'assets'))
  expect(files.filter((name) => /^whistle-worklet-[\w-]{8,}\.js$/.test(name))).toHaveLength(1)
  expect(files.filter((name) => !name.endsWith('.js'))).toEqual([])
})
