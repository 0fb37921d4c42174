import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { runFast } from './stage/fast-clock.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { answerBySigns, pedalSigns } from './stage/pedal.ts'
import { openStage, type Stage } from './stage/stage.ts'
import { bothComplete, expectBothDone, heardBy, judge, startBoth } from './stage/two-dips.ts'

const MIN = 60_000

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

describe('two dip gradients at once, by pedal alone', () => {
  it(
    'come to their end with all their readings and judgements, and the journal has every act by pedal',
    async () => {
      const { page, context, complaints } = await stage.visit()
      await page.goto(`${stage.host.address}?rehearse=15`)
      await page.locator('.stove').waitFor()
      await runFast(page, 15, 400)
      await startBoth(page)
      await answerBySigns(page, pedalSigns(page, 'PageDown', 'PageUp'), judge, () => bothComplete(page))
      const stored = await storedIn(page, REHEARSAL)
      expectBothDone(stored)
      expect(Object.keys(heardBy(stored))).toEqual(['pedal'])
      expect(heardBy(stored).pedal).toBeGreaterThan(60)
      expect(complaints).toEqual([])
      await context.close()
    },
    5 * MIN
  )
})
