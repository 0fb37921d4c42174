// A dyer with both hands in the work: sees the screen, and has two signs to give, by a foot on a pedal or by a whistle.
import type { Page } from 'playwright-core'
import type { Judge } from './answers.ts'

/** `done` does what calls, or takes the answer that is chosen; `next` goes on among answers or pots; `hold` is for what
 * can't be undone. */
export type Signs = { done(): Promise<void>; next(): Promise<void>; hold(pad: string): Promise<void> }

export function pedalSigns(page: Page, done: string, next: string): Signs {
  return {
    done: () => page.keyboard.press(done),
    next: () => page.keyboard.press(next),
    hold: () => stand(page, done)
  }
}

type Seen =
  | { kind: 'choose'; pot: string; act: string; answers: string[]; chosen: number; holds: boolean }
  | { kind: 'act' }
  | { kind: 'go' }

/** What the screen asks of a foot; null: nothing. Runs in the page. */
function lookUp(): Seen | null {
  const text = (node: Element | null | undefined): string => (node?.textContent ?? '').trim()
  const among = (pads: Element[], pot: string, act: string): Seen => {
    const chosen = pads.findIndex((pad) => pad.hasAttribute('data-chosen'))
    const holds = pads[chosen]?.matches('.pad-hold') ?? false
    return { kind: 'choose', pot, act, answers: pads.map(text), chosen, holds }
  }
  const sheet = document.querySelector('dialog[open]')
  if (sheet) {
    const title = text(sheet.querySelector('h2'))
    return among([...sheet.querySelectorAll('.sheet-body button:enabled')], title.split(':')[0] ?? '', title)
  }
  if (document.querySelector('.missed')) return { kind: 'act' }
  const call = document.querySelector('.call')
  if (call?.hasAttribute('data-question')) {
    const pads = [...call.querySelectorAll('.call-answers > :first-child button:enabled')]
    return among(pads, text(call.querySelector('.call-pot')), text(call.querySelector('.call-act')))
  }
  if (call) return { kind: 'act' }
  const calling = document.querySelector('.strip-bath .strip-call strong')
  const shown = document.querySelector('.bath[data-shown]')
  const name = shown?.getAttribute('aria-label') ?? ''
  if (calling) return text(calling) === `${name}:` ? { kind: 'act' } : { kind: 'go' }
  const finishes = (bath: Element | null): boolean => /: finish$/.test(text(bath?.querySelector('.bath-pad')))
  if (finishes(shown)) return { kind: 'act' }
  // A pot that is done lies on the bench.
  return [...document.querySelectorAll('.bench-pot')].some((pot) => /Done/.test(text(pot))) ? { kind: 'go' } : null
}

/** Answers until `done` says so. Throws when the screen stands still for half a minute. */
export async function answerBySigns(
  page: Page,
  signs: Signs,
  judge: Judge,
  done: () => Promise<boolean>
): Promise<void> {
  const judged = new Map<string, number>()
  let last = ''
  let movedMs = Date.now()
  while (!(await done())) {
    const now = await page.evaluate(() => document.querySelector('#app')?.textContent ?? '')
    if (now !== last) movedMs = Date.now()
    last = now
    if (Date.now() - movedMs > 30_000) throw new Error(`The Stove stands still: ${now}`)
    const seen = await page.evaluate(lookUp)
    if (seen === null) await page.waitForTimeout(100)
    else if (seen.kind === 'act') await step(page, signs.done)
    else if (seen.kind === 'go') await step(page, signs.next)
    else await choose(page, signs, seen, judge, judged)
  }
}

async function choose(
  page: Page,
  signs: Signs,
  seen: Extract<Seen, { kind: 'choose' }>,
  judge: Judge,
  judged: Map<string, number>
): Promise<void> {
  const { pot, act, answers, chosen, holds } = seen
  const key = `${pot} ${act}`
  const grades = answers.some((each) => /beside water only/.test(each))
  const wanted = grades
    ? answers.findIndex((each) => each.includes(judge(pot, act, judged.get(key) ?? 0)))
    : first(answers)
  if (chosen !== wanted) return step(page, signs.next)
  if (holds) return signs.hold(answers[chosen] ?? '')
  await step(page, signs.done)
  if (grades && (await page.locator('.ask-grade').count()) === 0) judged.set(key, (judged.get(key) ?? 0) + 1)
}

/** Heat off comes before what becomes of the bath; else the first answer will do: the expected reading, the first hue. */
function first(answers: string[]): number {
  const heat = answers.findIndex((each) => /heat is off$/.test(each))
  return Math.max(0, heat)
}

/** A sign, and a look whether anything came of it: all lies dead for a moment after the screen changed. */
async function step(page: Page, sign: () => Promise<void>): Promise<void> {
  const before = await page.evaluate(whatStands)
  await sign()
  const until = Date.now() + 350
  while (Date.now() < until && (await page.evaluate(whatStands)) === before) await page.waitForTimeout(50)
}

/** What a press may change: not the running time. */
function whatStands(): string {
  const answers = document.querySelector('dialog[open] .sheet-body, .call .call-answers, .bath[data-shown] .bath-pads')
  const chosen = document.querySelector('[data-chosen]')?.textContent ?? ''
  return `${answers?.textContent ?? ''} | ${chosen}`
}

/** Stays on the pedal until the pad shows that it was long enough. */
async function stand(page: Page, key: string): Promise<void> {
  await page.keyboard.down(key)
  try {
    await page.waitForFunction(() => document.querySelector('[data-held]') !== null, undefined, { timeout: 400 })
    await page.waitForFunction(() => document.querySelector('[data-held]') === null, undefined, { timeout: 3_000 })
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'TimeoutError') throw error
  } finally {
    await page.keyboard.up(key)
  }
}
