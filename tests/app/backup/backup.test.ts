import { describe, expect, it } from 'vitest'
import { readEntries } from '../../../src/core/pot/read-entry.ts'
import { sealEntry } from '../../../src/core/pot/write-entry.ts'
import type { PotEntry } from '../../../src/session/ports.ts'
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
    // What it drew can't be told from a journal that can't be read whole.
    expect(await tablet.journal.summaries(0, 1e15)).toEqual([{ ...line, draws: null }])
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
