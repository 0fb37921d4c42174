// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/preact'
import { afterEach, describe, expect, it } from 'vitest'
import { judgementsOf, type SwatchEvent } from '../../../src/core/record/swatch.ts'
import { Judgements } from '../../../src/ui/parts/swatch-judgements.tsx'
import { judgedSplit, photoKept, shot, skeinEntries } from '../../core/record/skein-found.ts'
import { aKitchen } from './a-kitchen.ts'

const letGo: SwatchEvent = { type: 'MediaTrimmed', sha256: shot.sha256, why: 'to make room' }

function show(events: SwatchEvent[]): string[] {
  const asked: string[] = []
  const kitchen = aKitchen({ nowMs: 0 })
  const read = async (sha256: string) => {
    asked.push(sha256)
    return { ok: false as const, say: 'The picture is not there.' }
  }
  kitchen.media = { ...kitchen.media, read } as unknown as typeof kitchen.media
  render(<Judgements kitchen={kitchen} judgements={judgementsOf(skeinEntries('pot-a', events))} />)
  return asked
}

afterEach(cleanup)

describe('a verdict in the record', () => {
  it('says of a photo that was let go that it was, and why, and does not look for it', () => {
    const asked = show([photoKept(), judgedSplit('pot-a'), letGo])
    expect(screen.getByText('Photo 1 was let go: to make room')).toBeTruthy()
    expect(screen.getByText(/^Split\. Turns redder from band 3/)).toBeTruthy()
    expect(asked).toEqual([])
  })

  it('shows one that is there, and says where it can’t be read', async () => {
    const asked = show([photoKept(), judgedSplit('pot-a')])
    expect((await screen.findByRole('alert')).textContent).toBe('The picture is not there.')
    expect(asked).toEqual([shot.sha256])
  })
})
