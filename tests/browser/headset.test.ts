import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { keepFile } from './stage/dyer.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { pressUntilThere } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

const short = `strandline: 1
title: Short
steps:
- do: Rinse the skein
- do: Squeeze it
- do: Hang it up
`

type Kept = { handlers: Record<string, (() => void) | null>; sounds: HTMLMediaElement[] }
type WithKept = { headsetOfTest: Kept }

/** Keeps what the app gives to the browser, and gives it on: the buttons and the sound are the browser's own. */
function keep(): void {
  const kept: Kept = { handlers: {}, sounds: [] }
  ;(globalThis as unknown as WithKept).headsetOfTest = kept
  const { mediaSession } = navigator
  const set = mediaSession.setActionHandler.bind(mediaSession)
  mediaSession.setActionHandler = (action, handler) => {
    kept.handlers[action] = handler as (() => void) | null
    set(action, handler)
  }
  const play = HTMLMediaElement.prototype.play
  HTMLMediaElement.prototype.play = function () {
    if (!kept.sounds.includes(this)) kept.sounds.push(this)
    return play.call(this)
  }
}

const button = (page: Page, name: string): Promise<boolean> =>
  page.evaluate((action) => {
    const handler = (globalThis as unknown as WithKept).headsetOfTest.handlers[action]
    handler?.()
    return Boolean(handler)
  }, name)

const playing = (page: Page): Promise<{ paused: boolean; loop: boolean; lengthSec: number }[]> =>
  page.evaluate(() =>
    (globalThis as unknown as WithKept).headsetOfTest.sounds.map(({ paused, loop, duration }) => ({
      paused,
      loop,
      lengthSec: duration
    }))
  )

const title = (page: Page): Promise<string | null> =>
  page.evaluate(() => navigator.mediaSession.metadata?.title ?? null)

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

async function potOnStove(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}?rehearse#/protocols`)
  await keepFile(page, 'short.yaml', short)
  await page.getByRole('button', { name: 'Start a pot' }).tap()
  await page.getByLabel('Colourway').fill('Slate')
  await page.getByLabel('Dry weight').first().fill('50')
  const pad = page.getByRole('button', { name: /^Start( all the same)?$/ }).last()
  await pressUntilThere(pad, page.locator('.stove'))
  await page.locator('.call-act', { hasText: 'Rinse the skein' }).waitFor()
}

/** Presses until it is felt: a call that has just come up is dead for 0.7 s, for a headset as for a knuckle. */
const pressUntil = (page: Page, name: string, felt: () => Promise<boolean>): Promise<void> =>
  expect
    .poll(
      async () => {
        await button(page, name)
        return felt()
      },
      { timeout: 15_000, interval: 400 }
    )
    .toBe(true)

describe('headset buttons', () => {
  it('are left alone until the setting is on', async () => {
    const { page, context } = await stage.visit()
    await page.addInitScript(keep)
    await potOnStove(page)
    expect(await playing(page)).toEqual([])
    expect(await button(page, 'nexttrack')).toBe(false)
    await context.close()
  })

  it('answer the call while silence plays; paused, they say so, and the call stands', async () => {
    const { page, context, complaints } = await stage.visit()
    await page.addInitScript(keep)
    await potOnStove(page)
    await page.evaluate(() => {
      location.hash = '#/settings'
    })
    await page.getByRole('group', { name: 'Headset buttons' }).getByRole('button', { name: 'On' }).tap()
    await page.evaluate(() => {
      location.hash = '#/stove'
    })
    await expect.poll(() => playing(page), { timeout: 15_000 }).toEqual([{ paused: false, loop: true, lengthSec: 6 }])
    await expect.poll(() => title(page)).toBe('Slate: Rinse the skein')
    const act = (name: string): Promise<boolean> => page.locator('.call-act', { hasText: name }).isVisible()
    await pressUntil(page, 'nexttrack', () => act('Squeeze it'))
    await expect.poll(() => title(page)).toBe('Slate: Squeeze it')

    await button(page, 'pause')
    await expect.poll(() => title(page)).toMatch(/^Paused/)
    expect(await playing(page)).toMatchObject([{ paused: true }])
    expect(await button(page, 'nexttrack')).toBe(false)
    expect(await act('Squeeze it')).toBe(true)
    // Calls are sounded by another way, and the pause leaves it alone.
    expect(await page.locator('.lamps').textContent()).toMatch(/Sound ready.*Headset paused: buttons don’t answer/s)
    await button(page, 'play')
    await expect.poll(() => title(page)).toBe('Slate: Squeeze it')
    await pressUntil(page, 'nexttrack', () => act('Hang it up'))

    const { entries } = await storedIn(page, REHEARSAL)
    const closed = entries.filter(({ event }) => event.type === 'StepClosed')
    expect(closed.map(({ by }) => (by.kind === 'person' ? by.via : by.kind))).toEqual(['headset', 'headset'])
    expect(complaints).toEqual([])
    await context.close()
  })
})
