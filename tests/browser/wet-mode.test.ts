import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answerAll } from './stage/answers.ts'
import { runFast } from './stage/fast-clock.ts'
import { holdPad } from './stage/hold.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { openStage, type Stage } from './stage/stage.ts'
import { bothComplete, expectBothDone, heardBy, judge, startBoth } from './stage/two-dips.ts'

const MIN = 60_000

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

describe('two dip gradients at once, by knuckle pads in wet mode', () => {
  it(
    'come to their end by press-and-hold alone: drops on every pad between the acts do nothing',
    async () => {
      const { page, context, complaints } = await stage.visit()
      await page.goto(`${stage.host.address}?rehearse=15`)
      await page.locator('.stove').waitFor()
      await page.getByRole('button', { name: 'Wet hands' }).tap()
      await page.getByText('Wet: hold to answer').waitFor()
      await runFast(page, 15, 400)
      await startBoth(page)
      let drops = 0
      await answerAll(
        page,
        judge,
        () => bothComplete(page),
        async (pad, quick) => {
          // Drops first, on what would answer: long enough after any change for a tap to count.
          await pad.tap(quick)
          drops += 1
          await holdPad(pad, quick)
        }
      )
      const stored = await storedIn(page, REHEARSAL)
      expectBothDone(stored)
      expect(Object.keys(heardBy(stored))).toEqual(['tap'])
      expect(drops).toBeGreaterThan(60)
      expect(complaints).toEqual([])
      await context.close()
    },
    8 * MIN
  )

  it('is ended by a hold and by no tap, and is still on after the app is opened again', async () => {
    const { page, context } = await stage.visit()
    await page.goto(`${stage.host.address}?rehearse`)
    await page.getByRole('button', { name: 'Wet hands' }).tap()
    const on = page.getByRole('button', { name: /^Wet: hold to answer/ })
    await on.waitFor()
    await on.tap()
    await page.getByRole('button', { name: 'Menu' }).tap()
    await page.reload()
    await on.waitFor()
    expect(await page.getByRole('dialog').count()).toBe(0)
    await holdPad(page.getByRole('button', { name: 'Menu' }))
    await page.getByRole('dialog').waitFor()
    await holdPad(page.getByRole('dialog').getByRole('button', { name: 'Back' }))
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await holdPad(on)
    await page.getByRole('button', { name: 'Wet hands' }).waitFor()
    await page.getByRole('button', { name: 'Menu' }).tap()
    await page.getByRole('dialog').waitFor()
    await context.close()
  })
})
