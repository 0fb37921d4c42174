// The Stove as it is seen and hit: measured in Chromium for one to four pots at each supported screen.
// Letters: ISO 9241-303, 20 to 22 arcmin; at 2 m that is a cap height of about 75 px on a phone at 100 px of type.
// Pads: 20 mm, about 120 CSS px on a phone and 104 on a tablet; the lesser ones 12 mm, about 72 and 62.
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchChromium } from '../../src/desk/bench/chromium.ts'
import { builtLook, type LookPage } from './look/built.ts'
import { type Look, measure, outside, overlaps } from './look/measure.ts'

const screens = [
  { name: 'a phone', width: 390, height: 844, main: 120, lesser: 72, time: 100, act: 30 },
  { name: 'a phone on its side', width: 844, height: 390, main: 120, lesser: 72, time: 75, act: 30 },
  { name: 'a tablet', width: 1180, height: 820, main: 104, lesser: 62, time: 65, act: 30 },
  { name: 'a laptop', width: 1440, height: 900, main: 104, lesser: 62, time: 65, act: 30 }
] as const

const stoves = [
  'moss',
  'moss,plum',
  'moss,plum,ochre',
  'moss,plum,ochre,heather',
  'moss,plum,ochre,heather,fernCools'
] as const

let look: LookPage
let browser: Browser
let page: Page

beforeAll(async () => {
  look = await builtLook()
  browser = await launchChromium(process.env.CHROME_PATH)
  page = await browser.newPage()
})
afterAll(async () => {
  await browser?.close()
  await look?.stop()
})

async function seen(query: string, size: { width: number; height: number }, ready: string): Promise<Look> {
  await page.setViewportSize({ width: size.width, height: size.height })
  await page.goto(look.address(query))
  await page.locator(ready).first().waitFor()
  // Words are fitted in the frame after they are laid out.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
  return page.evaluate(measure)
}

/** What holds for every look. */
function sound(found: Look, size: { width: number; height: number; main: number; lesser: number }): void {
  expect(found.cut, 'cut words').toEqual([])
  expect(overlaps([...found.main, ...found.lesser]), 'pads over pads').toEqual([])
  expect(outside([...found.main, ...found.lesser, ...found.words], size.width, size.height), 'off the screen').toEqual(
    []
  )
  for (const pad of found.main) expect(pad.height, `"${pad.name}" high`).toBeGreaterThanOrEqual(size.main)
  for (const pad of found.lesser) {
    expect(pad.height, `"${pad.name}" high`).toBeGreaterThanOrEqual(size.lesser)
    expect(pad.width, `"${pad.name}" wide`).toBeGreaterThanOrEqual(size.lesser)
  }
}

describe.each(screens)('on $name', (size) => {
  it.each(stoves)('%s: pads can be hit, words are whole, nothing lies over anything', async (pots) => {
    const found = await seen(`pots=${pots}`, size, '.bath-pad')
    sound(found, size)
    expect(found.scrolls).toEqual([])
    expect(overlaps(found.words), 'words over words').toEqual([])
    const pads = [...found.main, ...found.lesser]
    const covered = found.words.flatMap((word) => pads.flatMap((pad) => overlaps([word, pad])))
    expect(covered, 'words under pads').toEqual([])
  })

  it.each(stoves)('%s: labels keep off each other and on the screen', async (pots) => {
    const found = await seen(`pots=${pots}`, size, '.label')
    expect(overlaps(found.labels)).toEqual([])
    expect(outside(found.labels, size.width, size.height)).toEqual([])
    expect(found.labels.length).toBeGreaterThan(0)
  })

  it.each(['moss', 'moss,plum', 'moss,plum,ochre,heather'])(
    '%s: the time is read from across the kitchen',
    async (pots) => {
      const found = await seen(`pots=${pots}`, size, '.bath-pad')
      expect(found.font.time).toBeGreaterThanOrEqual(size.time)
      // A cap is about 0.7 of the type size in every system face.
      expect(found.cap.time).toBeGreaterThanOrEqual(0.65 * size.time)
      expect(found.font.act).toBeGreaterThanOrEqual(size.act)
    }
  )

  it.each(['mossLate', 'mossLate,heather', 'mossLate,plumLifted'])(
    '%s: a call is read from 2 m and hit with a knuckle',
    async (pots) => {
      const found = await seen(`pots=${pots}`, size, '.call-pad')
      sound(found, size)
      expect(overlaps(found.words)).toEqual([])
      const pads = [...found.main, ...found.lesser]
      expect(found.words.flatMap((word) => pads.flatMap((pad) => overlaps([word, pad])))).toEqual([])
      // With a strip above it on the smallest height the act gives way a little.
      const strip = pots.includes('Lifted')
      expect(found.font.act).toBeGreaterThanOrEqual(strip ? (size.height < 500 ? 30 : 46) : 60)
    }
  )

  it.each(['slateAsks', 'slateAsks,heather', 'slateChooses'])(
    '%s: a question has all its answers in sight',
    async (pots) => {
      const found = await seen(`pots=${pots}`, size, '.call-answers .pad')
      sound(found, size)
      expect(found.scrolls.filter((s) => s.startsWith('call-answers'))).toEqual([])
    }
  )

  it('a reading is asked for with seven temperatures in sight', async () => {
    const found = await seen('pots=ochre&at=480', size, '.ask-same')
    sound(found, size)
    for (const temp of ['77', '78', '79', '80', '81', '82', '83'].map((t) => Number(t) + 2)) {
      const pads = [...found.same, ...found.lesser].filter((pad) => pad.name.startsWith(`${temp} °C`))
      expect(pads, `${temp} °C`).toHaveLength(1)
    }
  })

  it.each(['plumStopped', 'plumTrouble,moss', 'rustForks,moss', 'done'])(
    '%s: whatever the pot is at, it fits',
    async (pots) => {
      sound(await seen(`pots=${pots}`, size, '.pad-main'), size)
    }
  )
})

describe('strips', () => {
  it.each(
    screens.flatMap((size) => [
      { ...size, over: 'a Stove', pots: 'moss,plum,ochre', ready: '.bath-pad' },
      { ...size, over: 'a call', pots: 'mossLate', ready: '.call-pad' },
      { ...size, over: 'a call beside another', pots: 'mossLate,slateAsks', ready: '.call-pad' }
    ])
  )(
    'on $name "not saved" over $over leaves every pad in sight and every word clear',
    async ({ pots, ready, ...size }) => {
      await seen(`pots=${pots}`, size, ready)
      await page.evaluate(() => {
        window.kitchen.signals.notSaved.value = { say: 'The store is full.' }
      })
      await page.locator('.strip-bad').waitFor()
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
      const found = await page.evaluate(measure)
      expect(outside([...found.main, ...found.lesser], size.width, size.height)).toEqual([])
      expect(overlaps([...found.main, ...found.lesser])).toEqual([])
      expect(overlaps(found.words), 'words over words').toEqual([])
    }
  )

  it('make the strands short, and their scale says no figure over another', async () => {
    for (const height of [520, 600, 664, 844]) {
      await seen('pots=moss,fernCools', { width: 390, height }, '.ruling-say')
      const figures = await page.evaluate(() =>
        [...document.querySelectorAll('.ruling-say')]
          .map((node) => node.getBoundingClientRect().top)
          .sort((a, b) => a - b)
      )
      for (const [i, top] of figures.entries()) expect(top - (figures[i - 1] ?? -13)).toBeGreaterThanOrEqual(12.5)
    }
  })

  it('are not needed for that: on a low phone the bench lies below the pads, not over them', async () => {
    await seen('pots=moss,fernCools', { width: 390, height: 664 }, '.bench .pad')
    const [pads, bench] = await Promise.all(
      ['.bath-pads', '.bench'].map((part) => page.locator(part).first().boundingBox())
    )
    expect(bench?.y).toBeGreaterThanOrEqual((pads?.y ?? Infinity) + (pads?.height ?? 0))
  })

  it('all at once push nothing out of reach: the Stove scrolls under them', async () => {
    await seen('pots=moss,plum', { width: 390, height: 844 }, '.bath-pad')
    await page.evaluate(() => {
      const { signals } = window.kitchen
      signals.notSaved.value = { say: 'The store is full.' }
      signals.owner.value = false
      signals.jump.value = { byMs: 3_600_000 }
      signals.update.value = { apply: () => {} }
    })
    await page.locator('.strip-info').waitFor()
    const pad = page.getByRole('button', { name: 'Plum: more' })
    await pad.scrollIntoViewIfNeeded()
    const reached = await pad.evaluate((node) => {
      const { left, top, width, height } = node.getBoundingClientRect()
      const at = document.elementFromPoint(left + width / 2, top + height / 2)
      return at !== null && (at === node || node.contains(at))
    })
    expect(reached).toBe(true)
  })
})

describe('in light and dark', () => {
  it.each(['light', 'dark'] as const)('%s: text on every bath and pad keeps 7:1', async (theme) => {
    await seen(`pots=moss,plum,ochre,heather&theme=${theme}`, { width: 1180, height: 820 }, '.bath-pad')
    const least = await page.evaluate(() => {
      const rgb = (text: string): number[] => (text.match(/[\d.]+/g) ?? []).map(Number)
      const luminance = ([r = 0, g = 0, b = 0]: number[]): number => {
        const [lr, lg, lb] = [r, g, b].map((c) => {
          const s = c / 255
          return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4
        }) as [number, number, number]
        return 0.2126 * lr + 0.7152 * lg + 0.0722 * lb
      }
      const over = (top: number[], below: number[]): number[] => {
        const a = top[3] ?? 1
        return [0, 1, 2].map((i) => (top[i] ?? 0) * a + (below[i] ?? 0) * (1 - a))
      }
      const ground = (node: Element): number[] => {
        const own = rgb(getComputedStyle(node).backgroundColor)
        const parent = node.parentElement
        return (own[3] ?? 1) === 1 || !parent ? own : over(own, ground(parent))
      }
      const nodes = [
        ...document.querySelectorAll('.bath-act, .bath-line, .bath-mark, .giant, .pad, .clock, .stove-hands, .lamps li')
      ]
      return nodes.map((node) => {
        const [a, b] = [luminance(rgb(getComputedStyle(node).color)), luminance(ground(node))]
        const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
        return { say: node.textContent?.slice(0, 30), ratio }
      })
    })
    expect(least.length).toBeGreaterThan(20)
    expect(least.filter(({ ratio }) => ratio < 7)).toEqual([])
  })
})

describe('motion', () => {
  it('a late call flashes once a second at most, and not at all where motion is reduced', async () => {
    await seen('pots=mossLate', { width: 390, height: 844 }, '.call-late')
    const animation = (): Promise<string> =>
      page.evaluate(() => {
        const { animationName, animationDuration } = getComputedStyle(document.querySelector('.call-late') as Element)
        return `${animationName} ${animationDuration}`
      })
    expect(await animation()).toBe('call-late 1s')
    await page.emulateMedia({ reducedMotion: 'reduce' })
    expect(await animation()).toMatch(/^none/)
    await page.emulateMedia({ reducedMotion: null })
  })
})
