// What a dyer does with whatever stands on the Stove: one knuckle at a time, seeing only what is on the screen. A pad is
// dead for a moment after the screen changed under it, so a knuckle that was too quick simply comes again.
import type { Locator, Page } from 'playwright-core'
import { tapPad } from './hold.ts'

/** How a bath or a rinse is judged: the pot, what is judged, and how often it was already. */
export type Judge = (pot: string, what: string, times: number) => string

/** Marks the one thing to press and says what it is; null: nothing asks for a hand. */
function findNext(): { kind: 'press' | 'write' | 'judge'; pot: string; act: string } | null {
  for (const old of document.querySelectorAll('[data-next]')) old.removeAttribute('data-next')
  const seen = (selector: string, within: ParentNode = document): HTMLElement | null =>
    [...within.querySelectorAll<HTMLElement>(selector)].find((each) => each.offsetParent !== null) ?? null
  const sheet = document.querySelector<HTMLElement>('dialog.sheet')
  const call = document.querySelector<HTMLElement>('.call')
  const away = seen('.missed .pad-main')
  const within = sheet ?? call ?? document
  const pot = seen('.call-pot')?.textContent ?? sheet?.querySelector('h2')?.textContent ?? ''
  const act = seen('.call-act')?.textContent ?? sheet?.querySelector('h2')?.textContent ?? ''
  const grades = seen('.ask-grade', within)
  if (away === null && grades !== null) return { kind: 'judge', pot, act }
  const text = seen('.ask-text textarea', within)
  const inSheet =
    sheet &&
    ([...sheet.querySelectorAll<HTMLElement>('.sheet-body .pad')].find((pad) =>
      /heat is off$/.test(pad.textContent ?? '')
    ) ??
      seen('.sheet-body .pad-main', sheet))
  const answer = seen('.ask-hues .pad, .ask-same, .ask-reading, .ask-choices .pad, .ask-number .pad-main', within)
  const finish =
    [...document.querySelectorAll<HTMLElement>('.bath-pad')].find((pad) => /: finish$/.test(pad.textContent ?? '')) ??
    null
  const show =
    [...document.querySelectorAll<HTMLElement>('.strip-bath .pad')].find((pad) =>
      /^Show /.test(pad.getAttribute('aria-label') ?? '')
    ) ?? null
  const next =
    away ?? text ?? answer ?? inSheet ?? (call && seen('.call-pad', call)) ?? (call ? null : (finish ?? show))
  next?.setAttribute('data-next', '')
  return next && { kind: text && next === text ? 'write' : 'press', pot, act }
}

/** One pad pressed, as the screen wants it. */
export type Knuckle = (pad: Locator, quick: { timeout: number }) => Promise<void>

/** Answers until `done` says so. Throws when the screen stands still for half a minute. */
export async function answerAll(
  page: Page,
  judge: Judge,
  done: () => Promise<boolean>,
  knuckle: Knuckle = tapPad
): Promise<string[]> {
  const did: string[] = []
  const judged = new Map<string, number>()
  let last = ''
  let movedMs = Date.now()
  while (!(await done())) {
    const next = await page.evaluate(findNext)
    const now = await page.evaluate(() => document.querySelector('.stove')?.textContent ?? '')
    if (now !== last) movedMs = Date.now()
    last = now
    if (Date.now() - movedMs > 30_000) throw new Error(`The Stove stands still: ${now}`)
    if (next === null) {
      await page.waitForTimeout(100)
      continue
    }
    const line = `${next.pot}: ${next.act}`
    if (did.at(-1) !== line) did.push(line)
    await answerOne(page, next, knuckle, (pot, act) => {
      const times = judged.get(`${pot} ${act}`) ?? 0
      return judge(pot, act, times)
    })
    if (next.kind === 'judge' && (await page.locator('.ask-grade').count()) === 0) {
      judged.set(`${next.pot} ${next.act}`, (judged.get(`${next.pot} ${next.act}`) ?? 0) + 1)
    }
  }
  return did
}

type Next = NonNullable<ReturnType<typeof findNext>>

async function answerOne(
  page: Page,
  next: Next,
  knuckle: Knuckle,
  judge: (pot: string, act: string) => string
): Promise<void> {
  // What was there a moment ago may be gone: then the next look says what to do.
  const quick = { timeout: 1_000 }
  try {
    if (next.kind === 'judge') {
      await knuckle(page.locator('.ask-grade', { hasText: judge(next.pot, next.act) }).first(), quick)
    } else if (next.kind === 'write') {
      await page.locator('[data-next]').fill('seen', quick)
      await knuckle(page.locator('.ask-text .pad-main'), quick)
    } else await knuckle(page.locator('[data-next]'), quick)
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'TimeoutError') throw error
  }
  await page.waitForTimeout(80)
}
