// From a letter typed into the workshop to what the reader says of it, in the built app, on a protocol of 200 steps; and
// how long the letter kept the page from anything else. Beside it: the same letters in a text area of a page that does
// nothing.
import type { Page } from 'playwright-core'
import { type Figure, median, ms, quantile } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { openRehearsal, type WithKitchen } from './kitchen-page.ts'
import { longProtocol } from './long-protocol.ts'
import { type Longest, longestTasks } from './main-thread.ts'

const STEPS = 200
const FRAME_MS = 16
const SHARE = 0.95
const LETTERS = 60
const WARMING = 24
const OVER = 8
const BETWEEN_MS = 60
/** Long enough for what waits for a pause. */
const PAUSE_MS = 400
const DRAFT = 'bench'

/** Where letters are typed, and where the page says what it makes of them. */
type Place = {
  name: string
  /** Puts the caret there; the letters follow. */
  into(page: Page): Promise<void>
  /** Holds what is said, with the letters in it. */
  told: string
  /** What is typed there; letters where it is left out. */
  keys?: string
}

const area = 'The text of the protocol'

const caretBehind = async (page: Page, what: string): Promise<void> => {
  const field = page.getByLabel(area)
  await field.evaluate((node: HTMLTextAreaElement, wanted) => {
    const at = node.value.indexOf(wanted)
    node.focus()
    node.setSelectionRange(at + wanted.length, at + wanted.length)
  }, what)
}

const places: Place[] = [
  {
    name: 'a step word in the text',
    into: async (page) => {
      await textWay(page)
      await caretBehind(page, '- enter')
    },
    told: '#workshop-problems'
  },
  {
    name: 'a time in the text',
    into: async (page) => {
      await textWay(page)
      await caretBehind(page, '- hold: {for: 107..109 s')
    },
    told: '#workshop-problems'
  },
  {
    name: 'the title in the text',
    into: async (page) => {
      await textWay(page)
      await caretBehind(page, 'title: Long')
    },
    told: 'h1'
  },
  {
    name: 'a field of a form',
    into: formWay,
    told: '.workshop-open'
  },
  {
    // Then the whole is right all along, and is worked out again with each of them.
    name: 'a figure in a form',
    into: async (page) => {
      await formWay(page)
      for (const _ of ' s') await page.keyboard.press('ArrowLeft')
    },
    told: '[data-open] .workshop-row',
    keys: '.1234567'
  }
]

async function formWay(page: Page): Promise<void> {
  const steps = page.getByRole('button', { name: 'Steps', exact: true })
  if (await steps.isVisible()) await steps.tap()
  await page.locator('.workshop-row', { hasText: 'Hold 107..109 s' }).click()
  await page.locator('.workshop-open').getByLabel('For', { exact: true }).focus()
  await page.keyboard.press('End')
}

async function textWay(page: Page): Promise<void> {
  const text = page.getByRole('button', { name: 'Text', exact: true })
  if (await text.isVisible()) await text.tap()
  await page.getByLabel(area).waitFor()
}

type Three = [number, number, number]
type Typed = { shownMs: number[]; tasks: Longest }

export async function keystroke(grounds: Grounds): Promise<Figure> {
  const found: string[] = []
  let worst = 0
  for (const size of [
    { name: 'phone', width: 412, height: 915 },
    { name: 'desk', width: 1280, height: 900 }
  ]) {
    for (const place of places) {
      const { shownMs, tasks } = await typedAt(grounds, place, size)
      const [shown, busy, work] = [shownMs, tasks.clockMs, tasks.workMs].map((all) => quantile(all, SHARE)) as Three
      worst = Math.max(worst, shown)
      const half = ms(median(shownMs))
      found.push(
        `${size.name}, ${place.name}: shown ${ms(shown)} (half ${half}), page busy ${ms(busy)}, ${ms(work)} of it work`
      )
    }
  }
  const bare = quantile(await typedBare(grounds), SHARE)
  return {
    what: `From a letter typed to what is wrong with it shown, ${STEPS} steps, 95 of 100 of ${LETTERS} letters each`,
    found: `${found.join('\n         ')}\n         a text area of a bare page: ${ms(bare)}`,
    goal: `shown in ${FRAME_MS} ms or less each: one frame`,
    met: worst <= FRAME_MS
  }
}

async function typedAt(
  { visit, app, browser }: Grounds,
  place: Place,
  size: { width: number; height: number }
): Promise<Typed> {
  const { context, page } = await visit()
  await page.setViewportSize(size)
  await openRehearsal(page, app)
  const draft = { id: DRAFT, title: 'Long', text: longProtocol(STEPS), changedAtMs: 0, undo: [], redo: [] }
  await page.evaluate(
    (kept) => (globalThis as unknown as WithDrafts).strandlineRehearsal.kitchen.drafts.keep(kept),
    draft
  )
  await page.goto(`${app}?rehearse=1#/protocols/write/${DRAFT}`)
  await page.getByRole('heading', { level: 1, name: 'Long' }).waitFor()
  await place.into(page)
  await page.evaluate(watchTyping, place.told)
  // The first letters warm the engine up, as the first minute of writing does.
  await type(page, WARMING, place.keys)
  const tasks = await longestTasks(browser, page, () => type(page, LETTERS, place.keys))
  const { shownMs } = await page.evaluate(() => (globalThis as unknown as Watched).benchTyped)
  await context.close()
  return { shownMs: shownMs.slice(-LETTERS), tasks }
}

async function typedBare({ visit, bare }: Grounds): Promise<number[]> {
  const { context, page } = await visit()
  await page.goto(bare)
  await page.evaluate(() => {
    const said = document.createElement('p')
    const field = document.createElement('textarea')
    field.oninput = () => {
      said.textContent = field.value
    }
    said.id = 'said'
    document.body.append(field, said)
    field.focus()
  })
  await page.evaluate(watchTyping, '#said')
  await type(page, LETTERS)
  const { shownMs } = await page.evaluate(() => (globalThis as unknown as Watched).benchTyped)
  await context.close()
  return shownMs
}

/** One letter after the other, each answered before the next, at the pace of quick hands. What was typed is typed over
 * now and then: a word of sixty letters would be cut where it is told. */
async function type(page: Page, letters: number, keys = 'abcdefghijklmnopqrstuvwxyz'): Promise<void> {
  for (let no = 0; no < letters; no++) {
    if (no % OVER === 0) {
      const before = await page.evaluate(() => (globalThis as unknown as Watched).benchTyped.anew())
      await page.waitForTimeout(PAUSE_MS)
      for (let back = 0; back < before; back++) await page.keyboard.press('Shift+ArrowLeft')
    }
    await page.keyboard.press(keys.charAt(no % keys.length))
    await page.waitForFunction(() => (globalThis as unknown as Watched).benchTyped.isAnswered())
    await page.waitForTimeout(BETWEEN_MS)
  }
}

type WithDrafts = WithKitchen & {
  strandlineRehearsal: { kitchen: { drafts: { keep(draft: object): Promise<unknown> } } }
}

/** How long each letter took to be answered; `anew`: how many letters stand there, to be typed over. */
type Watched = { benchTyped: { shownMs: number[]; isAnswered(): boolean; anew(): number } }

/** A letter is answered when the page says the letters typed so far, where it says what it makes of them. */
function watchTyping(told: string): void {
  const shownMs: number[] = []
  let letters = ''
  let typedMs: number | null = null
  document.addEventListener(
    'input',
    (event) => {
      letters += (event as InputEvent).data ?? ''
      typedMs = event.timeStamp
    },
    true
  )
  const look = (): void => {
    if (typedMs === null || !document.querySelector(told)?.textContent?.includes(letters)) return
    shownMs.push(performance.now() - typedMs)
    typedMs = null
  }
  new MutationObserver(look).observe(document, { childList: true, characterData: true, subtree: true })
  const watched: Watched['benchTyped'] = {
    shownMs,
    isAnswered: () => typedMs === null,
    anew() {
      const before = letters.length
      letters = ''
      return before
    }
  }
  ;(globalThis as unknown as Watched).benchTyped = watched
}
