import { IDBObjectStore } from 'fake-indexeddb'
import { describe, expect, it, vi } from 'vitest'
import { lineOf } from '../../../src/app/backup/line-of.ts'
import type { RawEntry } from '../../../src/core/backup/format.ts'
import { beginStaging, type Incoming, stage } from '../../../src/shell/backup/incoming.ts'
import { mergeIn } from '../../../src/shell/backup/merge-in.ts'
import { type Connection, openConnection } from '../../../src/shell/journal/connection.ts'
import { backupOf, type Device, device, everything, journalOf, photo, picture, planOf, potOn } from './device.ts'

describe('a restore that breaks off', () => {
  it('through a damaged file leaves nothing behind, at whatever byte it is cut or changed', async () => {
    const phone = await device()
    await potOn(phone, 'moss', false)
    await photo(phone, 'moss', picture('one'))
    const file = await backupOf(phone)
    const bytes = new Uint8Array(await file.arrayBuffer())
    const tablet = await device()
    await potOn(tablet, 'plum')
    const before = await journalOf(tablet)
    const plan = await planOf(tablet, file)
    for (let tries = 0; tries < 12; tries++) {
      const at = Math.floor((bytes.length * (tries + 0.5)) / 12)
      const flipped = bytes.slice()
      flipped[at] = (flipped[at] ?? 0) ^ 1
      for (const wrong of [bytes.slice(0, at), flipped]) {
        const restored = await tablet.backup.restore(new File([wrong], 'x'), plan, () => {})
        expect(restored, `byte ${at}`).toMatchObject({ ok: false })
      }
    }
    expect(await journalOf(tablet)).toEqual(before)
    expect((await everything(tablet)).incoming).toEqual([])
    // Another file than the one that was looked at is not taken for it.
    await potOn(phone, 'rust')
    expect(await tablet.backup.restore(await backupOf(phone), plan, () => {})).toMatchObject({ ok: false })
    expect(await journalOf(tablet)).toEqual(before)
  })

  it('inside the one merging transaction changes nothing at all', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await potOn(phone, 'plum')
    const file = await backupOf(phone)
    const tablet = await device()
    const before = await journalOf(tablet)
    const plan = await planOf(tablet, file)
    // The second line of the Dye book can't be put: the first batch is written by then.
    const put = IDBObjectStore.prototype.put
    let lines = 0
    const broken = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...args
    ) {
      if (this.name === 'summaries' && ++lines === 2) throw new DOMException('full', 'QuotaExceededError')
      return put.apply(this, args as [unknown])
    })
    const restored = await tablet.backup.restore(file, plan, () => {})
    broken.mockRestore()
    expect(lines).toBe(2)
    expect(restored).toMatchObject({ ok: false, say: expect.stringContaining('room') })
    expect(await journalOf(tablet)).toEqual(before)
    expect((await everything(tablet)).incoming).toEqual([])
  })
})

describe('a page that died in the middle of a restore', () => {
  const shot = picture('one')
  const parts = async (phone: Device): Promise<Incoming[]> => [
    { kind: 'entries', streamId: 'pot/moss', entries: (await phone.journal.read('pot/moss')) as RawEntry[] },
    { kind: 'kept', kept: { key: 'draft/a', value: { id: 'a', text: 'x' } } }
  ]

  /** What lies in the store when everything was laid out and nothing merged. */
  async function laidOut(): Promise<{ tablet: Device; before: unknown; connection: Connection }> {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss')
    await potOn(tablet, 'plum')
    const before = await journalOf(tablet)
    const connection = openConnection(`${tablet.name}-journal`)
    await beginStaging(connection, 1)
    await stage(connection, await parts(phone))
    const bytes = new Uint8Array(shot.bytes)
    const named = { sha256: shot.sha256, mime: shot.mime, size: bytes.length, storedAtMs: 1, streamIds: ['pot/moss'] }
    await stage(connection, [{ ...named, bytes }])
    return { tablet, before, connection }
  }

  it('before the merging: the journal is as before, what was laid out is dropped, and the next opening says so', async () => {
    const { tablet, before } = await laidOut()
    const { entries, summaries } = await everything(tablet)
    expect({ ...(before as object), entries, summaries }).toEqual(before)
    await tablet.tidy()
    expect(await journalOf(tablet)).toEqual(before)
    expect((await everything(tablet)).incoming).toEqual([])
    expect((await tablet.backup.news()).said).toContain('Nothing of it was taken over')
    await tablet.backup.dismissSaid()
    expect((await tablet.backup.news()).said).toBeNull()
  })

  it('after the merging: the journal is whole, the rest is done at the next opening, and that is said', async () => {
    const { tablet, connection } = await laidOut()
    await mergeIn(connection, { summarise: lineOf, writerId: 'w', atMs: 2 })
    const whole = await journalOf(tablet)
    expect(await tablet.kept.get('draft/a')).toBeUndefined()
    await tablet.tidy()
    expect(await journalOf(tablet)).toEqual(whole)
    expect((await tablet.journal.summaries(0, 1e15)).map(({ potId }) => potId).sort()).toEqual(['moss', 'plum'])
    expect(await tablet.journal.media(shot.sha256)).toEqual(shot)
    expect(await tablet.kept.get('draft/a')).toEqual({ id: 'a', text: 'x' })
    expect((await everything(tablet)).incoming).toEqual([])
    expect((await tablet.backup.news()).said).toContain('1 batch')
  })
})
