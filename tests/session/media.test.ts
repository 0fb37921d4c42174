import { describe, expect, it } from 'vitest'
import type { MediaBytes, PhotoMedia } from '../../src/core/pot/media.ts'
import { readEntries } from '../../src/core/pot/read-entry.ts'
import type { Outcome } from '../../src/session/types.ts'
import { PERSON } from '../core/pot/given.ts'
import { events, MIN, open, pass, send, started, stored, type Table } from './kitchen-table.ts'

const bytes: MediaBytes = { sha256: 'a'.repeat(64), mime: 'image/jpeg', bytes: new Uint8Array([1, 2, 3]).buffer }
const named: PhotoMedia = { sha256: bytes.sha256, mime: bytes.mime, bytes: 3, widthPx: 40, heightPx: 30 }

function photo(at: Table, media: MediaBytes[] = [bytes], commandId?: string): Promise<Outcome> {
  const command = { type: 'NotePhoto', what: 'the bath', media: named } as const
  return at.session.send('plum', command, { by: PERSON, media, commandId })
}

describe('a picture goes into the journal with its entry', () => {
  it('is there when the dyer is told so, at the step and time of the tap', async () => {
    const at = await started()
    await pass(at, 3 * MIN)
    expect(await photo(at)).toMatchObject({ ok: true })
    expect(events(at, 'PhotoNoted')).toEqual([{ type: 'PhotoNoted', what: 'the bath', path: 'soak', media: named }])
    expect(await at.journal.media(bytes.sha256)).toEqual(bytes)
  })

  it.each([
    ['comes without its bytes', []],
    ['comes with bytes of another name', [{ ...bytes, sha256: 'b'.repeat(64) }]],
    ['comes with fewer bytes than it says', [{ ...bytes, bytes: new ArrayBuffer(2) }]]
  ])('is refused where it %s', async (_, media) => {
    const at = await started()
    expect(await photo(at, media)).toMatchObject({ why: 'refused', refusal: { code: 'no-such-media' } })
    expect(events(at, 'PhotoNoted')).toEqual([])
    expect(at.store.media.size).toBe(0)
  })

  it('waits with its entry through a lost connection, and both land', async () => {
    const at = await started()
    at.faults.push('lost')
    expect(await photo(at)).toMatchObject({ why: 'not-saved' })
    expect(at.store.media.size).toBe(0)
    expect(at.session.notSaved()?.media).toEqual([bytes])
    await at.session.retry()
    expect(at.session.notSaved()).toBeNull()
    expect(events(at, 'PhotoNoted')).toHaveLength(1)
    expect(await at.journal.media(bytes.sha256)).toEqual(bytes)
  })

  it('is decided and stored anew after another writer was first', async () => {
    const at = await started()
    at.faults.push('conflict')
    expect(await photo(at)).toMatchObject({ ok: true })
    expect(await at.journal.media(bytes.sha256)).toEqual(bytes)
  })

  it('is stored once, however often the tap comes', async () => {
    const at = await started()
    await Promise.all([photo(at, [bytes], 'tap'), photo(at, [bytes], 'tap')])
    expect(events(at, 'PhotoNoted')).toHaveLength(1)
  })

  it('gives way on a full device: it is refused in words, and the act beside it is stored in good order', async () => {
    const at = await started()
    await pass(at, 10 * MIN)
    at.faults.push('lost', 'full')
    const first = photo(at)
    const act = send(at, { type: 'MarkDone', path: 'acid1' })
    expect(await first).toMatchObject({ why: 'not-saved' })
    expect(await act).toMatchObject({ ok: true })
    expect(open(at)).toEqual(['hold1'])
    expect(events(at, 'PhotoNoted')).toEqual([])
    expect(at.store.media.size).toBe(0)
    expect(at.session.notSaved()).toBeNull()
    expect(readEntries(stored(at))).toMatchObject({ damaged: [], unknown: false })
  })

  it('says that it was not kept when the device is full', async () => {
    const at = await started()
    at.faults.push('full')
    const answer = await photo(at)
    expect(answer).toMatchObject({ why: 'refused', refusal: { code: 'no-room', say: expect.stringContaining('full') } })
    expect(await send(at, { type: 'WriteNote', text: 'steam' })).toMatchObject({ ok: true })
    expect(events(at, 'PhotoNoted')).toEqual([])
    expect(readEntries(stored(at))).toMatchObject({ damaged: [], unknown: false })
  })

  it('goes for good with the entry that lets it go; undo does not claim to bring it back', async () => {
    const at = await started()
    await photo(at)
    expect(await send(at, { type: 'TrimMedia', sha256: bytes.sha256, why: 'to make room' })).toMatchObject({ ok: true })
    expect(await at.journal.media(bytes.sha256)).toBeNull()
    expect(events(at, 'PhotoNoted')).toHaveLength(1)
    await send(at, { type: 'Undo' })
    const withdrawn = events(at, 'Withdrawn')[0]?.entries.map(({ seq }) => seq) ?? []
    const types = stored(at)
      .filter(({ seq }) => withdrawn.includes(seq))
      .map(({ event }) => event.type)
    expect(types).toEqual(['PhotoNoted'])
  })
})
