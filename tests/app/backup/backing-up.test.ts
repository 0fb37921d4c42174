// Making a backup where the place it is written to fails in some way.
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { MadeBackup } from '../../../src/ui/backup.ts'
import { T0 } from '../../session/kitchen-table.ts'
import { type Device, device, potOn } from './device.ts'

type Place = { name: string; aborted: number; whole: Blob }

/** A chosen file that answers as told. */
function chosen({
  write = async () => {},
  read = (whole) => whole
}: {
  write?: () => Promise<void>
  read?: (whole: Blob) => Blob
} = {}): Place {
  const place: Place = { name: '', aborted: 0, whole: new Blob([]) }
  const pieces: Blob[] = []
  const writable = {
    write: async (piece: Blob) => {
      await write()
      pieces.push(piece)
    },
    close: async () => {
      place.whole = new Blob(pieces)
    },
    abort: async () => {
      place.aborted += 1
    }
  }
  const handle = { createWritable: async () => writable, getFile: async () => read(place.whole) }
  vi.stubGlobal('showSaveFilePicker', async ({ suggestedName }: { suggestedName: string }) => {
    place.name = suggestedName
    return handle
  })
  return place
}

async function made(place: () => Place): Promise<{ phone: Device; place: Place; made: MadeBackup; shares: number[] }> {
  const phone = await device()
  await potOn(phone, 'moss')
  const there = place()
  const shares: number[] = []
  return { phone, place: there, made: await phone.backup.make((share) => shares.push(share)), shares }
}

const lastOf = async ({ backup }: Device) => (await backup.facts()).last

afterEach(() => vi.stubGlobal('showSaveFilePicker', undefined))

describe('a backup', () => {
  it('is called one when it read back whole; its name is the time by the clock of the kitchen', async () => {
    // Five and a half hours east.
    const east = vi.spyOn(Date.prototype, 'getTimezoneOffset').mockReturnValue(-330)
    const { phone, place, made: backup, shares } = await made(() => chosen())
    east.mockRestore()
    const kitchen = new Date(T0 + 330 * 60_000).toISOString()
    const name = `strandline ${kitchen.slice(0, 10)} ${kitchen.slice(11, 16).replace(':', '')}.strandline-backup`
    expect(place.name).toBe(name)
    const last = { atMs: T0, name, bytes: place.whole.size, batches: 1, where: 'chosen' }
    expect(backup).toEqual({ ok: true, last })
    expect(await lastOf(phone)).toEqual(last)
    expect(place.aborted).toBe(0)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect(shares.at(-1)).toBe(1)
    expect(shares.some((share) => share > 0.5 && share < 1)).toBe(true)
  })

  it('that does not read back is none: it is taken back, said, and the last one stays the last', async () => {
    const damaged = (whole: Blob): Blob => new Blob([whole.slice(0, whole.size - 9)])
    const { phone, place, made: backup } = await made(() => chosen({ read: damaged }))
    expect(backup).toMatchObject({ ok: false, cancelled: false })
    expect(!backup.ok && backup.say).toMatch(
      /^What was written does not read back \(This backup is cut short.*Try again/
    )
    expect(place.aborted).toBe(1)
    expect(await lastOf(phone)).toBeNull()
  })

  it('that finds no room says so, and leaves no half file', async () => {
    const full = () => Promise.reject(new DOMException('full', 'QuotaExceededError'))
    const { phone, place, made: backup } = await made(() => chosen({ write: full }))
    const say = 'There is no room for the backup there. Make room, or choose another place. No backup was made.'
    expect(backup).toEqual({ ok: false, cancelled: false, say })
    expect(place.aborted).toBe(1)
    expect(await lastOf(phone)).toBeNull()
  })

  it('that can’t be written says why', async () => {
    const pulled = () => Promise.reject(new Error('the stick was pulled'))
    const { made: backup } = await made(() => chosen({ write: pulled }))
    const say = 'No backup was made: it could not be written (the stick was pulled). Try again.'
    expect(backup).toEqual({ ok: false, cancelled: false, say })
  })

  it('for which no place was chosen is none, and no failure', async () => {
    const none = (): Place => {
      vi.stubGlobal('showSaveFilePicker', () => Promise.reject(new DOMException('no', 'AbortError')))
      return { name: '', aborted: 0, whole: new Blob([]) }
    }
    const { phone, made: backup } = await made(none)
    const say = 'No place was chosen: no backup was made.'
    expect(backup).toEqual({ ok: false, cancelled: true, say })
    expect(await lastOf(phone)).toBeNull()
  })

  it('ends the putting off of the reminder', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await phone.backup.putOff()
    expect(await phone.kept.get('backup/put-off')).toBe(T0)
    chosen()
    await phone.backup.make(() => {})
    expect(await phone.kept.get('backup/put-off')).toBeUndefined()
  })
})

describe('what is told of this device', () => {
  it('counts batches, and no stream of the shelf or of a skein among them', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    const [first] = await phone.journal.read('pot/moss')
    await phone.journal.append([{ ...(first as object), streamId: 'swatch/moss' } as never], [])
    expect(await phone.backup.facts()).toMatchObject({ batches: 1, photos: 0, usedBytes: 1e6, roomBytes: 1e9 })
  })
})
