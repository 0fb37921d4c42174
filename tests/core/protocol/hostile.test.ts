import { describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { withSteps } from './broken-files.ts'
import { readSafely } from './read-safely.ts'

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
