import { describe, expect, it } from 'vitest'
import { sharing } from '../../src/shell/sharing/sharing.ts'

type Device = Parameters<typeof sharing>[0]

const clipboard = (given: Partial<Clipboard>): Device => ({ clipboard: given as Clipboard })
const refused = (name: string) => () => Promise.reject(new DOMException('no', name))

describe('the clipboard', () => {
  it('takes a text, and says when it does not', async () => {
    const written: string[] = []
    const writeText = async (text: string): Promise<void> => void written.push(text)
    expect(await sharing(clipboard({ writeText })).copy('a')).toBe(true)
    expect(written).toEqual(['a'])
    expect(await sharing(clipboard({ writeText: refused('NotAllowedError') })).copy('a')).toBe(false)
    expect(await sharing({}).copy('a')).toBe(false)
  })

  it('is read where a page may, and a refusal is no text', async () => {
    expect(await sharing(clipboard({ readText: async () => 'b' })).paste?.()).toBe('b')
    expect(await sharing(clipboard({ readText: refused('NotAllowedError') })).paste?.()).toBeNull()
    expect(sharing(clipboard({})).paste).toBeNull()
    expect(sharing({}).paste).toBeNull()
  })
})

describe('the share sheet', () => {
  const sheet = (share: Navigator['share'], can = true): Device => ({ share, canShare: () => can })

  it('is not there where the device has none, or none that takes a file', () => {
    expect(sharing({}).share).toBeNull()
    expect(sharing({ share: async () => {} }).share).toBeNull()
    expect(sharing(sheet(async () => {}, false)).share).toBeNull()
  })

  it('is given the text as a file of a kind that share sheets take', async () => {
    const given: ShareData[] = []
    const device = sheet(async (data = {}) => void given.push(data))
    expect(await sharing(device).share?.('Dip cycles', 'Dip cycles', 'strandline: 1\n')).toBe('shared')
    const [file] = given[0]?.files ?? []
    expect([given[0]?.title, file?.name, file?.type]).toEqual(['Dip cycles', 'Dip cycles.txt', 'text/plain'])
    expect(await file?.text()).toBe('strandline: 1\n')
  })

  it('closed by the dyer is no failure; refused is one', async () => {
    expect(await sharing(sheet(refused('AbortError'))).share?.('a', 'a', 'a')).toBe('closed')
    expect(await sharing(sheet(refused('NotAllowedError'))).share?.('a', 'a', 'a')).toBe('failed')
  })
})
