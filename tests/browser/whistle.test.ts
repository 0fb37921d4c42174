// Two pots dyed by whistling: Chromium with a sound file for a microphone, a whistle of its own in it for every sign.
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchChromium } from '../../src/desk/bench/chromium.ts'
import { type Host, hostOf } from '../../src/desk/bench/host.ts'
import { chanceOf } from '../whistle-corpus/chance.ts'
import { RATE_HZ } from '../whistle-corpus/filters.ts'
import { plain } from '../whistle-corpus/plain.ts'
import { wavOf } from '../whistle-corpus/wav.ts'
import { whistleOf } from '../whistle-corpus/whistle.ts'
import { runFast } from './stage/fast-clock.ts'
import { holdPad } from './stage/hold.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { answerBySigns } from './stage/pedal.ts'
import { phone, watch } from './stage/stage.ts'
import { bothComplete, expectBothDone, heardBy, judge, startBoth } from './stage/two-dips.ts'

const MIN = 60_000

const quiet = new Array<number>(RATE_HZ / 8).fill(0)
const sounds = {
  rise: whistleOf({ ...plain, kind: 'rise', fromHz: 1_100 }, chanceOf(1)),
  fall: whistleOf({ ...plain, kind: 'fall', fromHz: 1_900 }, chanceOf(2))
}

/** The app keeps one microphone open; each whistle is the file of that moment, opened beside it and let into it. */
const letIn = `
  const media = navigator.mediaDevices
  const open = media.getUserMedia.bind(media)
  let room = null
  media.getUserMedia = async () => {
    const air = new AudioContext()
    const into = air.createMediaStreamDestination()
    room = { air, into }
    return into.stream
  }
  globalThis.letIn = async (forMs) => {
    const bare = { echoCancellation: false, noiseSuppression: false, autoGainControl: false }
    const stream = await open({ audio: bare })
    const source = room.air.createMediaStreamSource(stream)
    source.connect(room.into)
    await new Promise((over) => setTimeout(over, forMs))
    source.disconnect()
    for (const track of stream.getTracks()) track.stop()
  }`

let host: Host
let browser: Browser
const folder = mkdtempSync(join(tmpdir(), 'strandline-mouth-'))
const file = join(folder, 'microphone.wav')
beforeAll(async () => {
  host = await hostOf(process.env.STRANDLINE_DIST ?? '')
  writeFileSync(file, wavOf(Float32Array.from(quiet), RATE_HZ))
  browser = await launchChromium(process.env.CHROME_PATH, [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${file}%noloop`
  ])
})
afterAll(async () => {
  await browser?.close()
  await host?.stop()
  rmSync(folder, { recursive: true, force: true })
})

async function whistle(page: Page, kind: keyof typeof sounds): Promise<void> {
  const pieces = [...quiet, ...[...sounds[kind]].map((each) => each * 0.2), ...quiet]
  // In one move: the browser must not read half a file.
  writeFileSync(`${file}.next`, wavOf(Float32Array.from(pieces), RATE_HZ))
  renameSync(`${file}.next`, file)
  await page.evaluate(
    (forMs) => (globalThis as unknown as { letIn(forMs: number): Promise<void> }).letIn(forMs),
    (pieces.length / RATE_HZ) * 1_000
  )
}

describe('two dip gradients at once, by whistle alone', () => {
  it(
    'come to their end with all their readings and judgements; only the end itself, which can not be undone, is a hold',
    async () => {
      const context = await browser.newContext(phone)
      await context.addInitScript(letIn)
      const { page, complaints } = await watch(context, host)
      await page.goto(`${host.address}?rehearse=15#/settings`)
      const on = page.getByRole('group', { name: 'Whistles answer calls' }).getByRole('button', { name: 'On' })
      await on.tap()
      await expect.poll(() => on.getAttribute('aria-pressed')).toBe('true')
      // The ear is deaf while calls sound, which ear.test.ts holds; on a clock four times as fast they would always sound.
      await page.getByRole('button', { name: 'On the screen only' }).tap()
      await page.evaluate(() => (location.hash = '#/stove'))
      await runFast(page, 4, 400)
      await startBoth(page)
      await page.getByText('Listening: a rising whistle').first().waitFor({ state: 'attached' })
      const signs = {
        done: () => whistle(page, 'rise'),
        next: () => whistle(page, 'fall'),
        hold: () => holdPad(page.locator('[data-chosen]').first())
      }
      await answerBySigns(page, signs, judge, () => bothComplete(page))
      const stored = await storedIn(page, REHEARSAL)
      expectBothDone(stored)
      const heard = heardBy(stored)
      expect(Object.keys(heard).sort()).toEqual(['tap', 'whistle'])
      expect(heard.whistle).toBeGreaterThan(60)
      const tapped = stored.entries.filter(({ by }) => by.kind === 'person' && by.via === 'tap')
      const late = tapped.filter(({ event }) => !['PotStarted', 'StepStarted', 'RoundStarted'].includes(event.type))
      expect(late.map(({ event }) => event.type).filter((type) => type !== 'CautionShown')).toEqual([
        'Finished',
        'Finished'
      ])
      expect(complaints).toEqual([])
      await context.close()
    },
    8 * MIN
  )
})
