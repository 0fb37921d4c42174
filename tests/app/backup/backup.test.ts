import { createHash } from 'node:crypto'
import { IDBObjectStore } from 'fake-indexeddb'
import { describe, expect, it, vi } from 'vitest'
import { lineOf } from '../../../src/app/backup/line-of.ts'
import type { RawEntry } from '../../../src/core/backup/format.ts'
import type { MediaBytes } from '../../../src/core/pot/media.ts'
import { readEntries } from '../../../src/core/pot/read-entry.ts'
import { sealEntry } from '../../../src/core/pot/write-entry.ts'
import type { PotEntry } from '../../../src/session/ports.ts'
import { beginStaging, type Incoming, stage } from '../../../src/shell/backup/incoming.ts'
import { mergeIn } from '../../../src/shell/backup/merge-in.ts'
import { type Connection, openConnection } from '../../../src/shell/journal/connection.ts'
import { PERSON } from '../../core/pot/given.ts'
import { MIN, startCommand } from '../../session/kitchen-table.ts'
import { backupOf, type Device, device, everything, planOf, restoreInto } from './device.ts'

function picture(text: string): MediaBytes {
  const bytes = new TextEncoder().encode(text)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  return { sha256, mime: 'image/jpeg', bytes: bytes.buffer }
}

async function send(
  on: Device,
  potId: string,
  command: Parameters<Device['session']['send']>[1],
  media?: MediaBytes[]
) {
  const sent = await on.session.send(potId, command, { by: PERSON, media })
  if (!sent.ok) throw new Error(JSON.stringify(sent))
}

async function photo(on: Device, potId: string, media: MediaBytes): Promise<void> {
  const { sha256, mime, bytes } = media
  const named = { sha256, mime, bytes: bytes.byteLength, widthPx: 4, heightPx: 3 }
  await send(on, potId, { type: 'NotePhoto', what: 'the bath', media: named }, [media])
}

async function potOn(on: Device, potId: string, ended = true): Promise<void> {
  await send(on, potId, startCommand(potId, potId))
  if (ended) await send(on, potId, { type: 'Abort', reason: 'made for the test' })
}

async function pass(on: Device, ms: number): Promise<void> {
  on.clock.advance(ms)
  await on.session.wake()
}

/** Journals as sets: entries, lines, bytes and what was set aside. */
async function journalOf(on: Device): Promise<unknown> {
  const { entries, summaries, media, aside } = await everything(on)
  return { entries, summaries, aside, media: (media as { sha256: string }[]).map(({ sha256 }) => sha256) }
}

describe('a backup restored on an empty device', () => {
  it('brings entries, lines, photos, drafts, protocols and settings, and not the name of the store', async () => {
    const phone = await device()
    const shot = picture('a bath')
    await potOn(phone, 'moss', false)
    await photo(phone, 'moss', shot)
    await send(phone, 'moss', { type: 'Abort', reason: 'x' })
    await phone.kept.set('writer', phone.ids.writerId)
    await phone.kept.set('settings', { theme: 'dark' })
    await phone.kept.set('draft/a', { id: 'a', title: 'A', text: 'strandline: 1', changedAtMs: 1 })
    await phone.kept.set('later/thing', { some: ['words'] })
    const tablet = await device()
    const plan = await restoreInto(tablet, await backupOf(phone))
    expect(plan).toMatchObject({ batches: 1, photos: 1, texts: 3, conflicts: 0, damagedPhotos: 0 })
    expect(plan.fresh).toMatchObject([{ potId: 'moss', colourway: 'moss' }])
    expect(await journalOf(tablet)).toEqual(await journalOf(phone))
    expect(await tablet.journal.media(shot.sha256)).toEqual(shot)
    expect(await tablet.kept.get('settings')).toEqual({ theme: 'dark' })
    expect(await tablet.kept.get('draft/a')).toMatchObject({ text: 'strandline: 1' })
    expect(await tablet.kept.get('later/thing')).toEqual({ some: ['words'] })
    expect(await tablet.kept.get('writer')).toBeUndefined()
    expect((await everything(tablet)).incoming).toEqual([])
  })

  it('again brings nothing, and says so', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await phone.kept.set('draft/a', { id: 'a', text: 'x' })
    const tablet = await device()
    const file = await backupOf(phone)
    await restoreInto(tablet, file)
    const before = await journalOf(tablet)
    const plan = await restoreInto(tablet, file)
    expect(plan).toMatchObject({ fresh: [], grown: [], entries: 0, texts: 0, photos: 0, conflicts: 0 })
    expect(await journalOf(tablet)).toEqual(before)
  })

  it('comes along with streams of any later kind, entry by entry', async () => {
    const phone = await device()
    const stock = sealEntry({
      ...open(await firstOf(phone)),
      streamId: 'stock/y',
      event: { type: 'StockOpened' }
    } as never)
    await phone.journal.append([stock as unknown as PotEntry], [])
    const tablet = await device()
    await restoreInto(tablet, await backupOf(phone))
    expect(await tablet.journal.read('stock/y')).toEqual([stock])
  })

  it('of two devices merged both ways is the same on both', async () => {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss')
    await potOn(tablet, 'plum')
    const [fromPhone, fromTablet] = [await backupOf(phone), await backupOf(tablet)]
    await restoreInto(tablet, fromPhone)
    await restoreInto(phone, fromTablet)
    expect(await journalOf(phone)).toEqual(await journalOf(tablet))
    expect((await phone.journal.summaries(0, 1e15)).map(({ potId }) => potId).sort()).toEqual(['moss', 'plum'])
  })
})

async function firstOf(on: Device): Promise<PotEntry> {
  await potOn(on, 'any')
  return (await on.journal.read('pot/any'))[0] as PotEntry
}

function open({ crc: _, ...rest }: PotEntry): Omit<PotEntry, 'crc'> {
  return rest
}

describe('a batch that was running when it was backed up', () => {
  it('does not call on the other device, and can be carried on there', async () => {
    const phone = await device()
    await potOn(phone, 'moss', false)
    const tablet = await device()
    const plan = await restoreInto(tablet, await backupOf(phone))
    expect(plan.elsewhere).toMatchObject([{ potId: 'moss' }])
    expect(tablet.session.pots()).toEqual([])
    expect(await tablet.journal.live()).toEqual([])
    await pass(tablet, 60 * MIN)
    expect(await tablet.journal.read('pot/moss')).toEqual(await phone.journal.read('pot/moss'))
    expect(await tablet.journal.summaries(0, 1e15)).toMatchObject([{ status: 'running', elsewhere: true }])
    await send(tablet, 'moss', { type: 'WriteNote', text: 'Carried on here.' })
    expect(tablet.session.pots()).toMatchObject([{ potId: 'moss', state: { status: 'running' } }])
    expect(await tablet.journal.summaries(0, 1e15)).not.toMatchObject([{ elsewhere: true }])
  })

  it('and was carried on on both shows both branches, the same on both devices', async () => {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss', false)
    await restoreInto(tablet, await backupOf(phone))
    await pass(tablet, 2 * MIN)
    await send(tablet, 'moss', { type: 'WriteNote', text: 'Carried on here.' })
    await send(tablet, 'moss', { type: 'Abort', reason: 'ended on the tablet' })
    await pass(phone, 3 * MIN)
    await send(phone, 'moss', { type: 'Abort', reason: 'ended on the phone' })
    const [fromPhone, fromTablet] = [await backupOf(phone), await backupOf(tablet)]
    expect((await restoreInto(phone, fromTablet)).branched).toMatchObject([{ potId: 'moss' }])
    expect((await restoreInto(tablet, fromPhone)).branched).toMatchObject([{ potId: 'moss' }])
    expect(await journalOf(phone)).toEqual(await journalOf(tablet))
    expect(await phone.journal.summaries(0, 1e15)).toMatchObject([{ branched: true, status: 'aborted' }])
  })

  it('on this device is left alone by a restore, which says so', async () => {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss', false)
    await restoreInto(tablet, await backupOf(phone))
    await send(tablet, 'moss', { type: 'WriteNote', text: 'Carried on here.' })
    await send(phone, 'moss', { type: 'Abort', reason: 'x' })
    await potOn(phone, 'plum')
    const before = { state: tablet.session.pots()[0]?.state, read: await tablet.journal.read('pot/moss') }
    const plan = await restoreInto(tablet, await backupOf(phone))
    expect(plan).toMatchObject({ heldBack: [{ potId: 'moss' }], fresh: [{ potId: 'plum' }] })
    expect({ state: tablet.session.pots()[0]?.state, read: await tablet.journal.read('pot/moss') }).toEqual(before)
    await send(tablet, 'moss', { type: 'Abort', reason: 'y' })
    expect(await restoreInto(tablet, await backupOf(phone))).toMatchObject({ heldBack: [], grown: [{ potId: 'moss' }] })
  })

  it('is not restored over while a pot is watched', async () => {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss')
    const file = await backupOf(phone)
    const plan = await planOf(tablet, file)
    tablet.watched = true
    const refused = await tablet.backup.restore(file, plan, () => {})
    expect(refused).toMatchObject({ ok: false, say: expect.stringContaining('heat on') })
    expect(await everything(tablet)).toMatchObject({ entries: [], media: [], incoming: [] })
  })
})

describe('where both hold something else under one name', () => {
  it('an entry of ours stands, theirs is set aside, and the plan says so', async () => {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss')
    await restoreInto(tablet, await backupOf(phone))
    const all = (await phone.journal.read('pot/moss')) as PotEntry[]
    const other = sealEntry({ ...open(all[1] as PotEntry), commandId: 'another' })
    const third = await device()
    await third.journal.append([all[0] as PotEntry, other], [])
    const plan = await restoreInto(tablet, await backupOf(third))
    expect(plan).toMatchObject({ conflicts: 1, entries: 0, mended: 0 })
    expect(await tablet.journal.read('pot/moss')).toEqual(all)
    expect(await tablet.backup.aside('moss')).toMatchObject([
      { why: 'conflict', seq: 2, entry: { commandId: 'another' } }
    ])
    // It goes on into the next backup: nothing that was ever read is lost.
    const fourth = await device()
    await restoreInto(fourth, await backupOf(tablet))
    expect(await fourth.backup.aside('moss')).toHaveLength(1)
  })

  it('a damaged entry here is mended from the backup, said, and kept aside', async () => {
    const [phone, tablet] = [await device(), await device()]
    await potOn(phone, 'moss')
    const all = (await phone.journal.read('pot/moss')) as PotEntry[]
    const rotten = { ...(all[1] as PotEntry), commandId: 'rotten' }
    await tablet.journal.append([all[0] as PotEntry, rotten, ...all.slice(2)], [])
    const plan = await restoreInto(tablet, await backupOf(phone))
    expect(plan).toMatchObject({ mended: 1, conflicts: 0 })
    expect(readEntries(await tablet.journal.read('pot/moss')).damaged).toEqual([])
    expect(await tablet.backup.aside('moss')).toMatchObject([{ why: 'damaged', entry: { commandId: 'rotten' } }])
  })

  it('a damaged entry that is new here comes as damaged, with the line its own store had for it', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    const all = (await phone.journal.read('pot/moss')) as PotEntry[]
    const [line] = await phone.journal.summaries(0, 1e15)
    const third = await device()
    await third.journal.append([{ ...(all[0] as PotEntry), commandId: 'rotten' }, ...all.slice(1)], line ? [line] : [])
    const tablet = await device()
    expect(await restoreInto(tablet, await backupOf(third))).toMatchObject({ damaged: 1 })
    expect(readEntries(await tablet.journal.read('pot/moss')).damaged).toHaveLength(1)
    expect(await tablet.journal.summaries(0, 1e15)).toEqual([line])
  })

  it('both drafts are kept, settings stay as they are here, and twice is as good as once', async () => {
    const [phone, tablet] = [await device(), await device()]
    for (const [on, text] of [
      [phone, 'theirs'],
      [tablet, 'ours']
    ] as const) {
      await on.kept.set('draft/a', { id: 'a', title: 'A', text })
      await on.kept.set('settings', { dyer: text })
    }
    const file = await backupOf(phone)
    expect(await restoreInto(tablet, file)).toMatchObject({ texts: 1, asHere: 1 })
    expect(await tablet.kept.get('settings')).toEqual({ dyer: 'ours' })
    const drafts = (await tablet.kept.startingWith<{ id: string; text: string }>('draft/')).map(({ text }) => text)
    expect(drafts.sort()).toEqual(['ours', 'theirs'])
    for (const [key, draft] of (await tablet.kept.all()).filter(([key]) => key.startsWith('draft/'))) {
      expect(key).toBe(`draft/${(draft as { id: string }).id}`)
    }
    expect(await restoreInto(tablet, file)).toMatchObject({ texts: 0 })
  })

  it('a store that gets back what it wrote and lost goes on under another name', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    const file = await backupOf(phone)
    const wiped = await device()
    wiped.ids.writerId = phone.ids.writerId
    await restoreInto(wiped, file)
    expect(wiped.ids.writerId).not.toBe(phone.ids.writerId)
    expect(await wiped.kept.get('writer')).toBe(wiped.ids.writerId)
    await send(wiped, 'moss', { type: 'WriteNote', text: 'after' })
    expect(readEntries(await wiped.journal.read('pot/moss'))).toMatchObject({ damaged: [] })
  })
})

describe('photos that were let go', () => {
  it('here do not come back, and nothing that is here is ever taken away', async () => {
    const [phone, tablet] = [await device(), await device()]
    const shot = picture('one')
    await potOn(phone, 'moss', false)
    await photo(phone, 'moss', shot)
    await send(phone, 'moss', { type: 'Abort', reason: 'x' })
    const whole = await backupOf(phone)
    await restoreInto(tablet, whole)
    await pass(phone, MIN)
    await send(phone, 'moss', { type: 'TrimMedia', sha256: shot.sha256, why: 'to make room' })
    expect(await phone.journal.media(shot.sha256)).toBeNull()
    expect(await restoreInto(phone, whole)).toMatchObject({ photos: 0, letGo: 1 })
    expect(await phone.journal.media(shot.sha256)).toBeNull()
    await restoreInto(tablet, await backupOf(phone))
    expect(await tablet.journal.media(shot.sha256)).toEqual(shot)
  })

  it('are offered first of all to make room, the oldest batch first, and none of a pot that is on', async () => {
    const phone = await device()
    for (const [no, potId] of ['moss', 'plum', 'rust'].entries()) {
      await potOn(phone, potId, false)
      await photo(phone, potId, picture(`shot ${no}`))
      if (potId !== 'rust') await send(phone, potId, { type: 'Abort', reason: 'x' })
      await pass(phone, MIN)
    }
    const offered = await phone.backup.trimmable(10)
    expect(offered).toMatchObject([
      { potId: 'moss', photos: 1, bytes: 6, backedUp: false },
      { potId: 'plum', photos: 1, backedUp: false }
    ])
    expect(await phone.backup.trimmable(1)).toHaveLength(1)
  })
})

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
