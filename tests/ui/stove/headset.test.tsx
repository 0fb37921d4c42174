// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest'
import type { HeadsetDeed } from '../../../src/ui/kitchen.ts'
import { noon } from './fixtures.ts'
import { atTheStove, call, drawn, type Journal, openWith, pass, sent, settle, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

type Told = { title: string; artist: string } | null

async function withHeadset(...journals: Journal[]) {
  const heard = new Set<(deed: HeadsetDeed) => void>()
  const told: Told[] = []
  const kitchen = await openWith((fresh) => {
    fresh.headset = {
      tell: (next) => told.push(next && { ...next, title: next.title.replaceAll('\u00a0', ' ') }),
      hear(press) {
        heard.add(press)
        return () => heard.delete(press)
      }
    }
  }, journals)
  const pressNow = async (deed: HeadsetDeed): Promise<void> => {
    for (const hear of [...heard]) hear(deed)
    await drawn()
  }
  const press = async (deed: HeadsetDeed): Promise<void> => {
    await pressNow(deed)
    await settle()
  }
  return { kitchen, told, press, pressNow }
}

describe('a headset at the Stove', () => {
  it('tells what it would answer, and answers the call by "next"', async () => {
    const { kitchen, told, press } = await withHeadset(made.mossLate(), made.heather())
    expect(told.at(-1)).toEqual({ title: 'Moss: Acid 2 in, 30 mL', artist: 'Next: done. Previous: say it again' })
    await press('done')
    expect(sent(kitchen)).toEqual([{ type: 'MarkDone', path: 'A2' }])
    expect(kitchen.sent.at(-1)?.via).toBe('headset')
    expect(told.at(-1)?.title).toBe('No call')
  })

  it('says the call again by "previous", and answers nothing by it', async () => {
    const { kitchen, press } = await withHeadset(made.mossLate())
    let sounded = 0
    kitchen.sayAgain = () => {
      sounded += 1
    }
    await press('again')
    expect([sounded, sent(kitchen)]).toEqual([1, []])
  })

  it('can’t choose among answers, and says so', async () => {
    const { kitchen, press } = await withHeadset(made.slateAsks())
    await press('done')
    expect(sent(kitchen)).toEqual([])
    expect(text(call())).toContain('A headset can’t choose among answers')
  })

  it('answers nothing where nothing calls, and says so', async () => {
    const { kitchen, press } = await withHeadset(made.moss())
    await press('done')
    expect(sent(kitchen)).toEqual([])
    expect(text(document.body)).toContain('nothing calls')
  })

  it('never answers a call that lies unseen under what was missed', async () => {
    const { kitchen, told, press } = await withHeadset(made.mossLate())
    kitchen.signals.missed.value = [
      { potId: 'p', colourway: 'Moss', path: 'A2', what: 'Acid 2', dueAtMs: noon - 72_000, byMs: 72_000, late: '' }
    ]
    await settle()
    await press('done')
    expect(sent(kitchen)).toEqual([])
    expect(told.at(-1)?.title).toBe('No call')
  })

  it('is not heard in the 0.7 s after a new call came up, as a knuckle is not', async () => {
    const { kitchen, pressNow } = await withHeadset(made.plumLifted())
    await pressNow('done')
    expect(sent(kitchen)).toHaveLength(1)
    expect(text(call())).toContain('Stir')
    pass(400)
    await pressNow('done')
    expect(sent(kitchen)).toHaveLength(1)
    pass(400)
    await pressNow('done')
    expect(sent(kitchen)).toHaveLength(2)
  })
})
