import { describe, expect, it } from 'vitest'
import { crc32 } from '../../../src/core/pot/crc.ts'

describe('the checksum of an entry', () => {
  it('gives the check value of CRC-32 as published', () => {
    // "CRC-32/ISO-HDLC" (IEEE 802.3): check value CBF43926 for the nine digits (catalogue of CRC algorithms; from memory).
    expect(crc32('123456789')).toBe('cbf43926')
    expect(crc32('')).toBe('00000000')
  })

  it('reads text beyond ASCII as the bytes of its UTF-8', () => {
    // zlib.crc32 of Python 3 gave these for the same texts in UTF-8.
    expect(crc32('82 °C')).toBe('bb039c07')
    expect(crc32('水 🧶 é')).toBe('c3cfb558')
    expect(crc32('\ud800x')).toBe(crc32('\ufffdx'))
  })

  it('notices a change of any one letter', () => {
    const text = '{"seq":4,"event":{"type":"Dosed","value":30}}'
    const changed = [...text].map((_, at) => crc32(`${text.slice(0, at)}~${text.slice(at + 1)}`))
    expect(new Set([crc32(text), ...changed]).size).toBe(text.length + 1)
  })
})
