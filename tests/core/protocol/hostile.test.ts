import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { withSteps } from './broken-files.ts'

const folder = new URL('../../../protocols/', import.meta.url)
const texts = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'))

/** Reads, and holds the answer to what every answer must be. */
const readSafely = (text: string): ReturnType<typeof readProtocol> => {
  const read = readProtocol(text)
  if (read.ok) return read
  expect(read.problems.length).toBeGreaterThan(0)
  const lines = text.split(/\r\n|\n|\r/).length
  for (const { code, line, column, what, instead } of read.problems) {
    const placed = line >= 1 && line <= lines && column >= 1 && Number.isInteger(line) && Number.isInteger(column)
    if (!placed || code === '' || what === '' || instead === '') {
      throw new Error(`a problem without its place: ${JSON.stringify({ code, line, column, what, lines })}`)
    }
  }
  return read
}

const hostile: Record<string, string> = {
  '10 MB of steps': withSteps('- hold: 6 min\n'.repeat(700_000)),
  '10 MB on one line': `title: ${'x'.repeat(10_000_000)}`,
  '10,000 steps': withSteps('- hold: 6 min\n'.repeat(10_000)),
  'a bomb of brackets': '['.repeat(200_000),
  'a bomb of braces': '{a: '.repeat(60_000),
  'brackets that only seem to close': '["]", '.repeat(2400),
  'a bomb of dashes': '- '.repeat(120_000),
  'dashes ever deeper': Array.from({ length: 50 }, (_, k) => ' '.repeat(200 * k) + '- '.repeat(100)).join('\n'),
  'indents ever deeper': Array.from({ length: 700 }, (_, k) => `${' '.repeat(k)}a:`).join('\n'),
  'a bomb of aliases': `a: &a [x, x]\n${Array.from({ length: 30 }, (_, k) => `b${k}: &b${k} [*${k === 0 ? 'a' : `b${k - 1}`}, *${k === 0 ? 'a' : `b${k - 1}`}]`).join('\n')}`,
  'anchors without end': '&a '.repeat(80_000),
  'quotes without end': '"'.repeat(200_000),
  'the same key without end': 'a: b\n'.repeat(50_000),
  'keys without end': Array.from({ length: 25_000 }, (_, i) => `a${i}: b`).join('\n'),
  'documents without end': '---\n'.repeat(64_000),
  'lines without end': '\n'.repeat(250_000),
  'comments without end': '# c\n'.repeat(60_000),
  'loops in loops in loops': withSteps(
    '- repeat: {times: 60, steps: [repeat: {times: 60, steps: [repeat: {times: 60, steps: [repeat: {times: 60, steps: [rinse]}]}]}]}'
  ),
  'a script in the title': 'strandline: 1\ntitle: <script>alert(1)</script>\nsteps: [rinse]\n',
  'names of objects': withSteps(
    '- __proto__: {for: 6 min}\n- constructor: x\n- hold: {__proto__: x, for: "{__proto__}"}'
  ),
  'nothing but colons': ': '.repeat(100_000)
}

describe('a hostile text', () => {
  for (const [name, text] of Object.entries(hostile)) {
    it(`of ${name} is answered at once`, () => {
      const times = Array.from({ length: 7 }, () => {
        const before = performance.now()
        readProtocol(text)
        return performance.now() - before
      })
      readSafely(text)
      // The best of seven: the machine has other work to do.
      expect(Math.min(...times)).toBeLessThan(50)
    })
  }

  it('is never taken for a protocol, a harmless title aside', () => {
    const taken = Object.keys(hostile).filter((name) => readProtocol(hostile[name] ?? '').ok)
    expect(taken).toEqual(['a script in the title'])
  })
})

describe('a damaged text', () => {
  it('gets an answer with every problem placed, in 2,000 mutations of the built-in protocols (seed 20310614)', () => {
    let refused = 0
    const mutation = fc.record({
      text: fc.constantFrom(...texts),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      drop: fc.integer({ min: 0, max: 40 }),
      put: fc.oneof(
        fc.constant(''),
        fc.string({ maxLength: 8 }),
        fc.constantFrom(
          '\n',
          '  ',
          '- ',
          ': ',
          '{',
          '}',
          '[',
          ']',
          '"',
          "'",
          '|',
          '#',
          '%',
          '&a',
          '*a',
          '!t',
          '\t',
          '\u202e',
          '0',
          '-',
          'null',
          '~'
        )
      ),
      cut: fc.oneof(
        { arbitrary: fc.constant(1), weight: 4 },
        { arbitrary: fc.double({ min: 0, max: 1, noNaN: true }), weight: 1 }
      )
    })
    fc.assert(
      fc.property(mutation, ({ text, at, drop, put, cut }) => {
        const place = Math.floor(at * text.length)
        const damaged = text.slice(0, place) + put + text.slice(place + drop)
        if (!readSafely(damaged.slice(0, Math.ceil(cut * damaged.length))).ok) refused++
      }),
      { numRuns: 2000, seed: 20310614 }
    )
    // Most wounds show; some only change a sentence.
    expect(refused).toBeGreaterThan(800)
  }, 60_000)

  it('gets an answer when it is random bytes, or random YAML', () => {
    const bytes = fc.uint8Array({ maxLength: 400 }).map((array) => Buffer.from(array).toString('latin1'))
    fc.assert(
      fc.property(bytes, (text) => void readSafely(text)),
      { numRuns: 500, seed: 1 }
    )
    const yaml = fc.json().map((json) => `strandline: 1\ntitle: T\nsteps: ${json}\n`)
    fc.assert(
      fc.property(yaml, (text) => void readSafely(text)),
      { numRuns: 500, seed: 2 }
    )
  }, 60_000)

  it('gets an answer wherever it is cut off', () => {
    for (const text of texts) {
      for (let end = 0; end < text.length; end += 97) readSafely(text.slice(0, end))
    }
  }, 60_000)
})
