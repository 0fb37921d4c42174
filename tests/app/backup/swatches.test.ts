import { describe, expect, it } from 'vitest'
import type { PhotoMedia } from '../../../src/core/pot/media.ts'
import { judgementsOf } from '../../../src/core/record/swatch.ts'
import { keepSwatch, readSwatches } from '../../../src/session/swatches.ts'
import { PERSON, T0 } from '../../core/pot/given.ts'
import { judgedSplit, photoKept, seenLighter, skeinEntries } from '../../core/record/skein-found.ts'
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
  potOn,
  restoreInto,
  send
} from './device.ts'

const shot = picture('a skein, its series and a card')
const media: PhotoMedia = {
  sha256: shot.sha256,
  mime: shot.mime,
  bytes: shot.bytes.byteLength,
  widthPx: 40,
  heightPx: 30
}

async function judgedOn(on: Device, batchId: string, atMs = T0): Promise<void> {
  const events = [photoKept(media), judgedSplit(batchId, [shot.sha256]), seenLighter(batchId)]
  const kept = await on.journal.append(skeinEntries(batchId, events, atMs), [], [shot])
  expect(kept).toEqual({ ok: true })
}

describe('what was found of a skein, in a backup', () => {
  it('comes to an empty device entry by entry, with its photo, under its batch', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await judgedOn(phone, 'moss')
    const tablet = await device()
    const plan = await restoreInto(tablet, await backupOf(phone))
    expect(plan).toMatchObject({ batches: 1, photos: 1, beside: 3, conflicts: 0, damaged: 0, damagedPhotos: 0 })
    expect(await journalOf(tablet)).toEqual(await journalOf(phone))
    const read = await readSwatches(tablet.journal, 'moss')
    expect(read).toEqual(await readSwatches(phone.journal, 'moss'))
    expect(judgementsOf(read.entries)).toMatchObject([
      { found: { type: 'SwatchJudged', verdict: { verdict: 'split' } }, photos: [media] },
      { found: { type: 'SwatchSeen' }, photos: [] }
    ])
    expect(await tablet.journal.media(shot.sha256)).toEqual(shot)
  })

  it('of no batch comes too, and twice is as good as once', async () => {
    const phone = await device()
    await judgedOn(phone, 'deed-of-its-own')
    const file = await backupOf(phone)
    const tablet = await device()
    await restoreInto(tablet, file)
    const before = await everything(tablet)
    const again = await restoreInto(tablet, file)
    expect(again).toMatchObject({ entries: 0, beside: 0, photos: 0, conflicts: 0 })
    expect(await everything(tablet)).toEqual(before)
    expect((await readSwatches(tablet.journal, null)).entries).toHaveLength(3)
  })

  it('of two devices is joined: both verdicts stand, and the picture they share is there once', async () => {
    const [phone, tablet] = [await device(), await device()]
    await judgedOn(phone, 'moss')
    await judgedOn(tablet, 'plum')
    await restoreInto(tablet, await backupOf(phone))
    expect((await readSwatches(tablet.journal, null)).entries).toHaveLength(6)
    expect((await everything(tablet)).media).toMatchObject([{ streamIds: ['swatch/plum', 'swatch/moss'] }])
  })
})

describe('photos of a skein', () => {
  const letGo = (on: Device, id: string, sha256: string) =>
    keepSwatch(
      { clock: on.clock, journal: on.journal, ids: on.ids },
      id,
      [{ type: 'MediaTrimmed', sha256, why: 'to make room' }],
      [],
      { commandId: `let go ${id}`, atMs: on.clock.nowMs(), by: PERSON }
    )

  it('are offered to make room with those of their batch, counted together, the oldest first', async () => {
    const phone = await device()
    await potOn(phone, 'moss', false)
    const bath = picture('the bath, longer')
    await photo(phone, 'moss', bath)
    await send(phone, 'moss', { type: 'Abort', reason: 'x' })
    await judgedOn(phone, 'moss')
    await judgedOn(phone, 'by-itself', T0 - MIN)
    expect(await phone.backup.trimmable(10)).toEqual([
      {
        potId: 'by-itself',
        colourway: 'Skein of no batch',
        startedAtMs: T0 - MIN,
        photos: 1,
        sounds: 0,
        bytes: shot.bytes.byteLength,
        backedUp: false,
        hashes: [],
        swatchHashes: [shot.sha256]
      },
      {
        potId: 'moss',
        colourway: 'moss',
        startedAtMs: T0,
        photos: 2,
        sounds: 0,
        bytes: bath.bytes.byteLength + shot.bytes.byteLength,
        backedUp: false,
        hashes: [bath.sha256],
        swatchHashes: [shot.sha256]
      }
    ])
    expect(await phone.backup.trimmable(1)).toMatchObject([{ potId: 'by-itself' }])
  })

  it('of a pot that is on are not offered', async () => {
    const phone = await device()
    await potOn(phone, 'moss', false)
    await judgedOn(phone, 'moss')
    expect(await phone.backup.trimmable(10)).toEqual([])
  })

  it('are in a backup only when they were kept before it, however old their batch is', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await pass(phone, MIN)
    await backupOf(phone)
    await judgedOn(phone, 'moss', T0 + 2 * MIN)
    expect(await phone.backup.trimmable(10)).toMatchObject([{ backedUp: false }])
    await pass(phone, 2 * MIN)
    await backupOf(phone)
    expect(await phone.backup.trimmable(10)).toMatchObject([{ backedUp: true }])
  })

  it('go without an entry going: what was read and found stays, and no backup brings them back', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await judgedOn(phone, 'moss')
    const whole = await backupOf(phone)
    const before = (await readSwatches(phone.journal, 'moss')).entries
    await pass(phone, MIN)
    expect(await letGo(phone, 'moss', shot.sha256)).toEqual({ ok: true })
    expect(await phone.journal.media(shot.sha256)).toBeNull()
    const after = await readSwatches(phone.journal, 'moss')
    expect(after.entries.slice(0, -1)).toEqual(before)
    expect(after).toMatchObject({ damaged: [], unknown: false })
    expect(judgementsOf(after.entries)[0]).toMatchObject({ photos: [{ ...media, letGo: 'to make room' }] })
    expect(await phone.backup.trimmable(10)).toEqual([])
    expect(await restoreInto(phone, whole)).toMatchObject({ photos: 0, letGo: 1 })
    expect(await phone.journal.media(shot.sha256)).toBeNull()
  })

  it('stay where another skein keeps the same picture', async () => {
    const phone = await device()
    await judgedOn(phone, 'one')
    await judgedOn(phone, 'two')
    const before = (await everything(phone, ['entries'])).entries ?? []
    await letGo(phone, 'one', shot.sha256)
    expect(await phone.journal.media(shot.sha256)).toEqual(shot)
    expect((await everything(phone, ['entries'])).entries).toHaveLength(before.length + 1)
    expect(await phone.backup.trimmable(10)).toMatchObject([{ potId: 'two' }])
  })
})
