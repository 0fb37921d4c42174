// What a restore does where something stands in its way, or the backup is larger than one go.
import { IDBObjectStore } from 'fake-indexeddb'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { kitchenBackup } from '../../../src/app/backup/kitchen-backup.ts'
import { lineOf } from '../../../src/app/backup/line-of.ts'
import { MIN } from '../../session/kitchen-table.ts'
import {
  backupOf,
  type Device,
  device,
  everything,
  journalOf,
  pass,
  photo,
  picture,
  planOf,
  potOn,
  restoreInto,
  send
} from './device.ts'

const { navigator } = globalThis
afterEach(() => vi.stubGlobal('navigator', navigator))

async function ended(potId: string): Promise<{ phone: Device; file: File }> {
  const phone = await device()
  await potOn(phone, potId)
  return { phone, file: await backupOf(phone) }
}

describe('a restore', () => {
  it('of more than is laid out in one go brings all of it, and lays out each part once', async () => {
    const phone = await device()
    await potOn(phone, 'moss', false)
    const shots = ['a', 'b', 'c'].map((letter) => picture(letter.repeat(3_000_000)))
    for (const shot of shots) await photo(phone, 'moss', shot)
    await send(phone, 'moss', { type: 'Abort', reason: 'x' })
    await phone.kept.set('draft/a', { id: 'a', text: 'x' })
    const file = await backupOf(phone)
    const tablet = await device()
    const plan = await planOf(tablet, file)
    expect(plan).toMatchObject({ photos: 3, photoBytes: 9_000_000, texts: 1, roomBytes: 1e9 - 1e6 })
    const add = IDBObjectStore.prototype.add
    const laid: string[] = []
    const watched = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (
      this: IDBObjectStore,
      ...args
    ) {
      if (this.name === 'incoming') laid.push((args[0] as { kind: string }).kind)
      return add.apply(this, args as [unknown])
    })
    const restored = await tablet.backup.restore(file, plan, () => {})
    watched.mockRestore()
    expect(restored).toMatchObject({ ok: true, batches: 1, texts: 1, heldBack: 0, notKept: null })
    expect(laid.sort()).toEqual(['entries', 'kept', 'media', 'media', 'media'])
    expect(await journalOf(tablet)).toEqual(await journalOf(phone))
    for (const shot of shots) expect((await tablet.journal.media(shot.sha256))?.bytes.byteLength).toBe(3_000_000)
  })

  it('says where small kept things could not be put in place, and the next opening that can does it', async () => {
    const { phone } = await ended('moss')
    await phone.kept.set('draft/a', { id: 'a', text: 'x' })
    const file = await backupOf(phone)
    const tablet = await device()
    const plan = await planOf(tablet, file)
    const { set } = tablet.kept
    const full = async (key: string, value: unknown): Promise<void> => {
      if (key.startsWith('draft/')) throw new Error('full')
      return set(key, value)
    }
    tablet.kept.set = full
    const restored = await tablet.backup.restore(file, plan, () => {})
    expect(restored).toMatchObject({ ok: true, batches: 1, texts: 0 })
    expect(restored.ok && restored.notKept).toMatch(/put in place when Strandline opens next/)
    await tablet.tidy()
    // Still not: it must not be called done.
    expect((await tablet.backup.news()).said).toBeNull()
    tablet.kept.set = set
    await tablet.tidy()
    expect(await tablet.kept.get('draft/a')).toEqual({ id: 'a', text: 'x' })
    expect((await tablet.backup.news()).said).toContain('1 batch came in.')
    expect((await everything(tablet)).incoming).toEqual([])
  })

  it('tells the session that the journal has other pots now', async () => {
    const { file } = await ended('moss')
    const tablet = await device()
    let told = 0
    const merged = async (): Promise<void> => {
      told += 1
    }
    const backup = kitchenBackup({ ...tablet.parts, merged })
    await backup.restore(file, await planOf(tablet, file), () => {})
    expect(told).toBe(1)
  })

  it('is given up where a pot comes to want hands while it is being read', async () => {
    const { file } = await ended('moss')
    const tablet = await device()
    const plan = await planOf(tablet, file)
    const restored = await tablet.backup.restore(file, plan, () => {
      tablet.watched = true
    })
    expect(restored).toMatchObject({ ok: false, say: expect.stringContaining('wants hands') })
    expect(await everything(tablet)).toMatchObject({ entries: [], summaries: [], incoming: [] })
  })

  it('is not begun in a tab that does not work the pots, nor beside one that restores', async () => {
    const { file } = await ended('moss')
    const tablet = await device()
    const plan = await planOf(tablet, file)
    const idle = kitchenBackup({ ...tablet.parts, owns: () => false })
    expect(await idle.restore(file, plan, () => {})).toMatchObject({ ok: false, say: 'Another tab works the pots.' })
    const taken = { request: (_: string, __: unknown, work: (lock: null) => unknown) => work(null) }
    vi.stubGlobal('navigator', { locks: taken })
    expect(await tablet.backup.restore(file, plan, () => {})).toMatchObject({
      ok: false,
      say: 'Another tab is restoring.'
    })
    expect(await everything(tablet)).toMatchObject({ entries: [], incoming: [] })
  })

  it('brings every photo of the file it was asked for, whatever another file says that was looked at since', async () => {
    const phone = await device()
    const shot = picture('one')
    await potOn(phone, 'moss', false)
    await photo(phone, 'moss', shot)
    await send(phone, 'moss', { type: 'Abort', reason: 'x' })
    const whole = await backupOf(phone)
    await pass(phone, MIN)
    await send(phone, 'moss', { type: 'TrimMedia', sha256: shot.sha256, why: 'to make room' })
    // A third device has the picture still and the deed of letting go: what it backs up names and lacks nothing.
    const third = await device()
    await restoreInto(third, whole)
    await restoreInto(third, await backupOf(phone))
    const later = await backupOf(third)
    const tablet = await device()
    const plan = await planOf(tablet, whole)
    await planOf(tablet, later)
    expect(await tablet.backup.restore(whole, plan, () => {})).toMatchObject({ ok: true })
    expect(await tablet.journal.media(shot.sha256)).toEqual(shot)
  })
})

describe('what can be let go', () => {
  it('is found behind any number of batches without pictures', async () => {
    const phone = await device()
    for (let nth = 0; nth < 53; nth++) {
      await potOn(phone, `pot-${nth}`, nth !== 52)
      await pass(phone, 1_000)
    }
    await photo(phone, 'pot-52', picture('one'))
    await send(phone, 'pot-52', { type: 'Abort', reason: 'x' })
    expect(await phone.backup.trimmable(8)).toMatchObject([{ potId: 'pot-52' }])
  }, 30_000)
})

describe('the line of a stream whose entries don’t give it any more', () => {
  const told = {
    streamId: 'pot/a',
    potId: 'a',
    batchName: 'A',
    colourway: 'Moss',
    colour: '#000000',
    protocolTitle: 'Dip',
    startedAtMs: 5,
    endedAtMs: null,
    status: 'running',
    goodsMassG: 100
  }

  it('is the one its own store had, and what ran there does not run here', () => {
    expect(lineOf('pot/a', [], told)).toEqual({
      ...told,
      offProtocol: false,
      entries: 0,
      draws: null,
      elsewhere: true
    })
    const over = { ...told, status: 'complete', endedAtMs: 9, offProtocol: true, entries: 7, elsewhere: true }
    expect(lineOf('pot/a', [], over)).toMatchObject({ endedAtMs: 9, offProtocol: true, entries: 7 })
    expect(lineOf('pot/a', [], over)?.elsewhere).toBeUndefined()
  })

  it('is none where what is told is of another stream, or of no shape', () => {
    const wrong = [null, 'x', { ...told, streamId: 'pot/b' }, { ...told, colourway: 7 }, { ...told, startedAtMs: 'x' }]
    for (const line of wrong) expect(lineOf('pot/a', [], line)).toBeNull()
    expect(lineOf('pot/a', [], { ...told, goodsMassG: undefined })).toBeNull()
  })
})
