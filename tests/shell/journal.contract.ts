import { beforeEach, describe, expect, it } from 'vitest'
import type { JournalPort } from '../../src/session/ports.ts'
import { jpeg, letGo, note, photo, summary } from './entries.ts'

/** What every journal must hold, whatever it is made of. `fresh` gives an empty one and a second one on the same store. */
export function journalContract(name: string, fresh: () => [JournalPort, JournalPort]): void {
  describe(`${name} keeps the contract of a journal`, () => {
    let journal: JournalPort
    let second: JournalPort
    beforeEach(() => {
      ;[journal, second] = fresh()
    })

    it('gives back the entries of one pot in the order of writing, past ten as well', async () => {
      const written = Array.from({ length: 12 }, (_, at) => note('1', at + 1))
      for (const entry of written) expect(await journal.append([entry], [])).toEqual({ ok: true })
      await journal.append([note('10', 1)], [])
      expect(await journal.read('pot/1')).toEqual(written)
      expect(await journal.read('pot/none')).toEqual([])
    })

    it('never overwrites: a second writer of the same place conflicts and changes nothing', async () => {
      await journal.append([note('1', 1)], [summary('1')])
      const late = note('1', 1, { commandId: 'second tab' })
      expect(await second.append([late], [summary('1', { entries: 99 })])).toEqual({ ok: false, why: 'conflict' })
      expect(await journal.read('pot/1')).toEqual([note('1', 1)])
      expect(await journal.live()).toEqual([summary('1')])
    })

    it('writes all of one command or nothing of it, over two pots too', async () => {
      await journal.append([note('1', 1)], [])
      expect(await journal.append([note('2', 1), note('1', 1)], [summary('2')])).toEqual({ ok: false, why: 'conflict' })
      expect(await journal.read('pot/2')).toEqual([])
      expect(await journal.live()).toEqual([])
      expect(await journal.append([note('1', 2), note('2', 1)], [])).toEqual({ ok: true })
      expect(await journal.read('pot/2')).toHaveLength(1)
    })

    it('keeps the order of writing where a restored store wrote on under a new name', async () => {
      const restored = note('1', 1, { writerId: 'a0', after: { writerId: 'w1', seq: 2 }, recordedAtMs: 10 })
      const next = note('1', 2, { writerId: 'a0', recordedAtMs: 11 })
      for (const entry of [note('1', 1), note('1', 2), restored, next]) await journal.append([entry], [])
      expect(await journal.read('pot/1')).toEqual([note('1', 1), note('1', 2), restored, next])
    })

    it('lists the live pots by their start, and no longer when they have ended', async () => {
      await journal.append([], [summary('b', { startedAtMs: 2000 }), summary('a'), summary('c', { startedAtMs: 3000 })])
      expect((await journal.live()).map(({ potId }) => potId)).toEqual(['a', 'b', 'c'])
      await journal.append(
        [],
        [summary('a', { status: 'complete', endedAtMs: 9 }), summary('b', { status: 'held', startedAtMs: 2000 })]
      )
      expect((await second.live()).map(({ potId, status }) => `${potId} ${status}`)).toEqual(['b held', 'c running'])
    })

    it('lists the pots of a stretch of time, latest first, as many as were asked for', async () => {
      for (const hour of [1, 2, 3, 4]) await journal.append([], [summary(`${hour}`, { startedAtMs: hour })])
      expect((await journal.summaries(2, 4)).map(({ potId }) => potId)).toEqual(['3', '2'])
      expect((await journal.summaries(0, 100, 3)).map(({ potId }) => potId)).toEqual(['4', '3', '2'])
      expect(await journal.summaries(5, 9)).toEqual([])
    })

    it('gives all streams of one beginning, each in the order of writing, and no other', async () => {
      const on = (id: string, seq: number) => note('', seq, { streamId: `stock/${id}` })
      for (const entry of [on('b', 1), on('a', 1), on('b', 2), note('1', 1)]) await journal.append([entry], [])
      await journal.append([note('', 1, { streamId: 'stocks' })], [])
      expect(await second.streams('stock/')).toEqual([[on('a', 1)], [on('b', 1), on('b', 2)]])
      expect(await journal.streams('swatch/')).toEqual([])
    })

    it('finds the pots that drew from a bottle by what they drew last, not by what they drew once', async () => {
      const draw = (itemId: string, amount = 5) => ({ itemId, atMs: 1, amount, unit: 'mL' as const })
      const moss = summary('1', { draws: [draw('x'), draw('x', 7), draw('y')] })
      await journal.append([], [moss, summary('2', { draws: [draw('y')] }), summary('3')])
      expect(await second.drawnFrom('x')).toEqual([moss])
      expect((await journal.drawnFrom('y')).map(({ potId }) => potId)).toEqual(['1', '2'])
      await journal.append([], [summary('1')])
      expect(await journal.drawnFrom('x')).toEqual([])
      expect(await journal.live()).toEqual([summary('1'), summary('2', { draws: [draw('y')] }), summary('3')])
    })

    it('keeps the bytes of a picture with the entry that names it, and gives them back by their hash', async () => {
      const bytes = jpeg(1, 2, 3)
      expect(await journal.append([photo('1', 1, bytes)], [], [bytes])).toEqual({ ok: true })
      expect(await second.media(bytes.sha256)).toEqual(bytes)
      expect(await second.media('0'.repeat(64))).toBeNull()
      expect(await second.mediaSizes()).toEqual({ photos: 1, photoBytes: 3, sounds: 0, soundBytes: 0 })
    })

    it('keeps neither the entry nor the bytes of a write that conflicts', async () => {
      await journal.append([note('1', 1)], [])
      const bytes = jpeg(1, 2, 3)
      expect(await second.append([photo('1', 1, bytes)], [], [bytes])).toMatchObject({ why: 'conflict' })
      expect(await journal.media(bytes.sha256)).toBeNull()
    })

    it('stores the same picture once, and lets it go only when no pot names it any more', async () => {
      const bytes = jpeg(4, 5)
      await journal.append([photo('1', 1, bytes)], [], [bytes])
      await journal.append([photo('2', 1, bytes)], [], [bytes])
      expect(await journal.mediaSizes()).toMatchObject({ photos: 1, photoBytes: 2 })
      await journal.append([letGo('1', 2, bytes)], [])
      expect(await journal.media(bytes.sha256)).toEqual(bytes)
      await journal.append([letGo('2', 2, bytes)], [])
      expect(await journal.media(bytes.sha256)).toBeNull()
      expect(await journal.mediaSizes()).toMatchObject({ photos: 0, photoBytes: 0 })
      await journal.append([photo('1', 3, bytes)], [], [bytes])
      expect(await journal.media(bytes.sha256)).toEqual(bytes)
    })

    it('lets nothing go where the entry that says so could not be written', async () => {
      const bytes = jpeg(6)
      await journal.append([photo('1', 1, bytes)], [], [bytes])
      expect(await second.append([letGo('1', 1, bytes)], [])).toMatchObject({ why: 'conflict' })
      expect(await journal.media(bytes.sha256)).toEqual(bytes)
    })

    it('tells the bytes of photos and of sound apart', async () => {
      const sound = { ...jpeg(7, 8, 9, 10), sha256: 'd'.repeat(64), mime: 'audio/webm' }
      await journal.append([photo('1', 1, sound)], [], [sound])
      await journal.append([photo('1', 2, jpeg(1))], [], [jpeg(1)])
      expect(await journal.mediaSizes()).toEqual({ photos: 1, photoBytes: 1, sounds: 1, soundBytes: 4 })
    })

    it('hands out copies: a changed answer changes nothing stored', async () => {
      await journal.append([note('1', 1)], [summary('1')])
      const [read] = (await journal.read('pot/1')) as { atMs: number }[]
      if (read !== undefined) read.atMs = 0
      expect(await journal.read('pot/1')).toEqual([note('1', 1)])
    })
  })
}
