import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { Extras } from '../../src/app/extras.ts'
import { laterExtras } from '../../src/app/later-extras.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

it('are fetched once, and asked for again when they did not come', async () => {
  const made = { rungs: [] } as unknown as Extras
  let asked = 0
  const added: Extras[] = []
  const extras = laterExtras(
    async () => {
      asked += 1
      if (asked === 1) throw new Error('not in the cache')
      return made
    },
    (there) => added.push(there)
  )
  extras.fetchNow()
  extras.fetchNow()
  await vi.advanceTimersByTimeAsync(0)
  expect([asked, extras.now.value]).toEqual([1, null])
  await vi.advanceTimersByTimeAsync(5_000)
  extras.fetchNow()
  expect([asked, extras.now.value, added]).toEqual([2, made, [made]])
})
