// @vitest-environment happy-dom
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { storedProtocols } from '../../src/app/stored-protocols.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'
import { mossFinished } from '../core/record/moss.ts'

const text = readFileSync('protocols/dip-gradient.yaml', 'utf8')

describe('protocols', () => {
  it('that are built in are there at once, each under an id that fits an address', async () => {
    const all = await storedProtocols(memoryKept()).protocols()
    expect(all.length).toBeGreaterThanOrEqual(6)
    for (const { id, from } of all) expect([encodeURIComponent(id), from]).toEqual([id, 'built-in'])
  })

  it('run again by the text of a record are kept for the next visit, once', async () => {
    const kept = memoryKept()
    const first = await storedProtocols(kept).protocolAgain('Dip gradient', text)
    if (!first.ok) throw new Error(JSON.stringify(first.problems))
    await storedProtocols(kept).protocolAgain('The same text', text)
    const own = (await storedProtocols(kept).protocols()).filter(({ from }) => from === 'file')
    expect(own.map(({ id, text: kept }) => [id, kept])).toEqual([[first.stored.id, text]])
  })

  it('can be run again though nothing can be kept', async () => {
    const full = { ...memoryKept(), set: () => Promise.reject(new Error('full')) }
    expect(await storedProtocols(full).protocolAgain('Dip gradient', text)).toMatchObject({ ok: true })
  })

  it('made of a pot are kept under a title of their own, and found again on the next visit', async () => {
    const kept = memoryKept()
    const { entries } = mossFinished()
    const made = await storedProtocols(kept).keepMade({ entries, damaged: [] })
    if (!made.ok) throw new Error(made.say)
    expect(made.stored.protocol.title).toBe('2031-06-14 Moss, as done')
    const own = (await storedProtocols(kept).protocols()).filter(({ from }) => from === 'file')
    expect(own.map(({ id }) => id)).toEqual([made.stored.id])
  })

  it('made of a pot that could not be kept say so', async () => {
    const kept = memoryKept()
    kept.set = () => Promise.reject(new DOMException('no room', 'QuotaExceededError'))
    const made = await storedProtocols(kept).keepMade({ entries: mossFinished().entries, damaged: [] })
    expect(made).toEqual({ ok: false, say: expect.stringContaining('Not kept') })
  })

  it('of a pot whose start is lost are not made, and it says why', async () => {
    const entries = mossFinished().entries.slice(1)
    const made = await storedProtocols(memoryKept()).keepMade({ entries, damaged: [] })
    expect(made).toEqual({ ok: false, say: expect.stringContaining('The start of this pot can’t be read') })
  })
})
