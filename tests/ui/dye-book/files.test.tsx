// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, describe, expect, it } from 'vitest'
import { judgementsOf } from '../../../src/core/record/swatch.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import DyeBookScreen from '../../../src/ui/screens/dye-book/index.tsx'
import type { KeptSwatches, KitchenSwatches } from '../../../src/ui/swatches.ts'
import { mossFinished } from '../../core/record/moss.ts'
import { seenLighter, skeinEntries } from '../../core/record/skein-found.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const entries = skeinEntries('pot-a', [seenLighter('pot-a')])
const kept: KeptSwatches = {
  judgements: judgementsOf(entries),
  comparisons: [],
  readings: [],
  read: { entries, damaged: [], unknown: false },
  problem: null
}

function open(answer: () => Promise<KeptSwatches>): TestKitchen {
  const bench = mossFinished()
  const kitchen = aKitchen({ journals: [{ potId: 'pot-a', entries: bench.entries }], nowMs: bench.nowMs })
  kitchen.signals.route.value = '#/dye-book/pot-a'
  kitchen.swatches = async () => ({ kept: answer }) as unknown as KitchenSwatches
  render(<DyeBookScreen kitchen={kitchen} />)
  return kitchen
}

async function saved(kitchen: TestKitchen): Promise<{ swatches: unknown }> {
  fireEvent.click(await screen.findByText('Record as JSON'))
  await waitFor(() => expect(kitchen.saved).toHaveLength(1))
  return JSON.parse(kitchen.saved[0]?.text ?? '')
}

afterEach(() => {
  cleanup()
  forgetTaps()
})

describe('the record as a file', () => {
  it('holds what was found of the skein', async () => {
    const kitchen = open(async () => kept)
    expect((await saved(kitchen)).swatches).toEqual(kept.read)
    expect(screen.queryByText(/without what was found/)).toBeNull()
  })

  it('is written without it where it can’t be read, and that is said on the screen and in the file', async () => {
    const kitchen = open(async () => ({
      judgements: [],
      comparisons: [],
      readings: [],
      read: null,
      problem: 'It can’t be read (gone).'
    }))
    expect((await saved(kitchen)).swatches).toBeNull()
    const said = await screen.findByText(/^The file was written without what was found of the skein\./)
    expect(said.textContent).toContain('It can’t be read (gone).')
  })

  it('is written where not even the opening works', async () => {
    const kitchen = open(async () => {
      throw new Error('no module')
    })
    expect((await saved(kitchen)).swatches).toBeNull()
    await screen.findByText(/^The file was written without/)
  })
})
