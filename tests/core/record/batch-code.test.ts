import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { batchCode, readCode } from '../../../src/core/record/batch-code.ts'

const id = '0b5c1d2e-8f00-4a11-9c3d-5e6f70819203'

describe('the code on a tag', () => {
  it('is a plain text of our own that leads a phone to no web address', () => {
    expect(batchCode(id)).toBe(`strandline:batch/${id}`)
    expect(batchCode(id)).not.toMatch(/:\/\/|www\./)
  })

  it('is read back to the batch it was made for, whatever the id', () => {
    fc.assert(
      fc.property(fc.oneof(fc.uuid(), fc.stringMatching(/^[a-z0-9-]{1,40}$/)), (potId) => {
        expect(readCode(batchCode(potId))).toEqual({ kind: 'batch', potId })
      })
    )
  })

  it.each([
    ['spaces and a line end around it', `  strandline:batch/${id}\r\n`],
    ['capitals, as some scanners send', `STRANDLINE:BATCH/${id.toUpperCase()}`],
    ['the id alone', id]
  ])('is read with %s', (_, text) => expect(readCode(text)).toEqual({ kind: 'batch', potId: id }))

  it('of something else is told apart from words that are no code', () => {
    expect(readCode('strandline:stock/7')).toEqual({ kind: 'other', what: 'stock' })
    for (const text of ['', 'Moss', 'strandline:batch/', 'strandline:', 'strandline:batch/two words'])
      expect(readCode(text), text).toEqual({ kind: 'none' })
  })
})
