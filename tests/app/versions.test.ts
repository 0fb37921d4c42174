import { describe, expect, it } from 'vitest'
import { storedProtocols } from '../../src/app/stored-protocols.ts'
import { type Kept, memoryKept } from '../../src/shell/settings/kept.ts'

const text = (title: string, times = 1): string =>
  `strandline: 1\ntitle: ${title}\nsteps:\n${'  - rinse\n'.repeat(times)}`

async function save(kept: Kept, content: string, nowMs: number) {
  const saved = await storedProtocols(kept).saveWritten(content, nowMs)
  if (!saved.ok) throw new Error(saved.say)
  return saved.stored
}

const written = async (kept: Kept) => (await storedProtocols(kept).protocols()).filter((one) => one.written)

describe('a protocol written here', () => {
  it('is among the protocols under its title, whatever other visit asks', async () => {
    const kept = memoryKept()
    const stored = await save(kept, text('Mine'), 1_000)
    expect((await written(kept)).map(({ id, text, written }) => ({ id, text, written }))).toEqual([
      { id: stored.id, text: text('Mine'), written: { savedAtMs: 1_000, versions: 1 } }
    ])
    expect(encodeURIComponent(stored.id)).toBe(stored.id)
  })

  it('saved again keeps every version, offers the newest, and lists the newest first', async () => {
    const kept = memoryKept()
    const { id } = await save(kept, text('Mine'), 1_000)
    await save(kept, text('Mine', 2), 2_000)
    await save(kept, text('Mine', 3), 3_000)
    await save(kept, text('Another'), 4_000)
    const [mine, another] = await written(kept)
    expect([mine?.text, mine?.written, another?.text]).toEqual([
      text('Mine', 3),
      { savedAtMs: 3_000, versions: 3 },
      text('Another')
    ])
    const versions = await storedProtocols(kept).versions(id)
    expect(versions.map((one) => [one.text, one.written?.savedAtMs])).toEqual([
      [text('Mine', 3), 3_000],
      [text('Mine', 2), 2_000],
      [text('Mine'), 1_000]
    ])
  })

  it('saved again unchanged is no new version', async () => {
    const kept = memoryKept()
    await save(kept, text('Mine'), 1_000)
    expect((await save(kept, text('Mine'), 2_000)).written).toEqual({ savedAtMs: 1_000, versions: 1 })
  })

  it('stays the newest though the clock was set back in between', async () => {
    const kept = memoryKept()
    await save(kept, text('Mine'), 5_000)
    await save(kept, text('Mine', 2), 1_000)
    expect((await written(kept)).map((one) => one.text)).toEqual([text('Mine', 2)])
  })

  it('brought in from elsewhere is its next version when asked to be, and says as what it came', async () => {
    const kept = memoryKept()
    const { id } = await save(kept, text('Mine'), 1_000)
    await storedProtocols(kept).saveWritten(text('Mine', 2), 2_000, { cameAs: 'mine.yaml' })
    const versions = await storedProtocols(kept).versions(id)
    expect(versions.map((one) => [one.text, one.written?.cameAs])).toEqual([
      [text('Mine', 2), 'mine.yaml'],
      [text('Mine'), undefined]
    ])
    expect((await written(kept))[0]?.written).toEqual({ savedAtMs: 2_000, versions: 2, cameAs: 'mine.yaml' })
  })

  it('takes one without versions that has its title with it as the version before, when asked to', async () => {
    const kept = memoryKept()
    const again = await storedProtocols(kept).protocolAgain('Mine', text('Mine'))
    if (!again.ok) throw new Error('it was read before')
    const came = { cameAs: 'mine.yaml', joins: again.stored.id }
    expect(await storedProtocols(kept).saveWritten(text('Other', 2), 1_000, came)).toMatchObject({ ok: true })
    const saved = await storedProtocols(kept).saveWritten(text('Mine', 2), 1_000, came)
    if (!saved.ok) throw new Error(saved.say)
    expect(saved.stored.written?.versions).toBe(2)
    const versions = await storedProtocols(kept).versions(saved.stored.id)
    expect(versions.map((one) => one.text)).toEqual([text('Mine', 2), text('Mine')])
    const listed = (await storedProtocols(kept).protocols()).filter(({ from }) => from === 'file')
    expect(listed.map((one) => one.text)).toEqual([text('Other', 2), text('Mine', 2)])
  })

  it('is not saved while it has problems, and they are told', async () => {
    const kept = memoryKept()
    const saved = await storedProtocols(kept).saveWritten('strandline: 1\ntitle: X\nsteps:\n  - hoover\n', 1)
    expect(saved).toMatchObject({ ok: false, problems: [{ line: 4 }] })
    expect(await written(kept)).toEqual([])
  })

  it('says so where it can’t be stored', async () => {
    const full = { ...memoryKept(), set: () => Promise.reject(new Error('full')) }
    expect(await storedProtocols(full).saveWritten(text('Mine'), 1)).toMatchObject({
      ok: false,
      say: expect.stringContaining('Not saved')
    })
  })

  it('is found beside a version that is damaged', async () => {
    const kept = memoryKept()
    await save(kept, text('Mine'), 1_000)
    for (const [i, bad] of [null, 7, { id: 'own-1' }, { id: 'own-2', text: '', savedAtMs: 1, protocol: {} }].entries())
      await kept.set(`version/bad/${i}`, bad)
    expect((await written(kept)).map((one) => one.protocol.title)).toEqual(['Mine'])
  })
})
