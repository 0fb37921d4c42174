import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reparsed } from '../../../../src/core/protocol/edit/reparse.ts'
import { type Parsed, parseAnew } from '../../../../src/core/protocol/edit/tree.ts'
import { Chance } from '../../../simulation/chance.ts'
import { slips } from '../damage.ts'
import { anyText } from './any-text.ts'

const seed = 20310614
const builtIns = readdirSync('protocols')
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => readFileSync(`protocols/${file}`, 'utf8'))

const plainly = ({ text, root, located, problems, comments }: Parsed): string =>
  JSON.stringify({ text, root, located, problems, comments: comments() })

/** What is typed, pasted or taken out by hand: signs that mean something, line ends, and letters. */
const pieces = [
  ...['a', '7', ' ', '-', '- ', ': ', ',', '"', "'", '#', ' # ', '{', '}', '[', ']', '|', '>', '&', '*', '!', '%', '?'],
  ...[
    '\n',
    '\r\n',
    '\r',
    '\t',
    '\n  - rinse\n',
    '\n      ',
    '{for: 6 min}',
    '[a, b]',
    '---\n',
    '|\n     two\n     lines',
    ''
  ]
]

const typedInto = (text: string, chance: Chance): string => {
  const from = chance.whole(0, text.length)
  return text.slice(0, from) + chance.pick(pieces) + text.slice(from + chance.whole(0, 3))
}

/** Whether it was parsed by the piece; then what came of it was the same as of the whole. */
const isTheSame = (before: Parsed, text: string, whole: Parsed): Parsed | null => {
  const made = reparsed(before, text, parseAnew)
  if (made && plainly(made) !== plainly(whole)) throw new Error(JSON.stringify([before.text, text]))
  return made
}

describe('a text parsed by the piece that changed', () => {
  it(`is parsed as the whole would be, whatever is typed into any protocol (seed ${seed})`, () => {
    const chance = new Chance(seed)
    const texts = [...builtIns, ...fc.sample(anyText, { numRuns: 80, seed }).map(({ text }) => text)]
    let [byPiece, all] = [0, 0]
    for (const start of texts) {
      let before = parseAnew(start)
      for (let i = 0; i < 8; i++) {
        const text = typedInto(before.text, chance)
        const whole = parseAnew(text)
        const made = isTheSame(before, text, whole)
        all++
        if (made) byPiece++
        // Typed on from there, as it would be: what was made by the piece is the ground of the next.
        if (whole.problems.length === 0) before = made ?? whole
      }
    }
    expect(byPiece).toBeGreaterThan(all / 5)
  })

  it(`is parsed as the whole would be after slips of the hand (seed ${seed})`, () => {
    const chance = new Chance(seed)
    let byPiece = 0
    for (const text of builtIns) {
      const before = parseAnew(text)
      for (const slip of Object.values(slips)) {
        const after = slip(text, chance, builtIns)
        if (isTheSame(before, after, parseAnew(after))) byPiece++
      }
    }
    expect(byPiece).toBeGreaterThan(40)
  })

  it('parses no more than the item that is typed into', () => {
    const text = `strandline: 1\ntitle: A\nsteps:\n${'  - hold: 6 min # by the clock\n'.repeat(200)}`
    const at = text.lastIndexOf('6 min')
    const parsed: string[] = []
    const made = reparsed(parseAnew(text), `${text.slice(0, at)}1${text.slice(at)}`, (piece) => {
      parsed.push(piece)
      return parseAnew(piece)
    })
    expect(parsed).toEqual(['  - hold: 16 min # by the clock\n'])
    expect(made?.located).toEqual(parseAnew(made?.text ?? '').located)
  })

  it('parses a new item alone, and nothing for a line that says nothing above everything', () => {
    const text = `# mine\nstrandline: 1\ntitle: A\nsteps:\n${'  - hold: 6 min\n'.repeat(200)}  - rinse\n`
    const typed: [string, string[]][] = [
      [text.replace('  - rinse', '  - rinse\n  - air'), ['  - rinse\n  - air\n']],
      [text.replace('# mine', '# mine, and its'), []],
      [text.replace('# mine', '\n# mine'), []],
      [text.replace('# mine\n', ''), []],
      [`  # more\r\n${text}`, []]
    ]
    for (const [after, pieces] of typed) {
      const parsed: string[] = []
      const made = reparsed(parseAnew(text), after, (piece) => {
        parsed.push(piece)
        return parseAnew(piece)
      })
      expect(parsed).toEqual(pieces)
      expect(made && plainly(made)).toBe(plainly(parseAnew(after)))
    }
  })

  it('is parsed as a whole where what stands above everything says something', () => {
    const text = '# mine\nstrandline: 1\ntitle: A\nsteps: [rinse]\n'
    for (const head of ['# mi\u202Ene\n', '---\n', '%YAML 1.1\n', '\t# mine\n', 'mine\n', '# mine\r', '? # mine\n']) {
      const after = text.replace('# mine\n', head)
      const made = reparsed(parseAnew(text), after, parseAnew)
      expect(made && plainly(made)).toBe(made && plainly(parseAnew(after)))
      expect(parseAnew(after).problems.length > 0 && made !== null).toBe(false)
    }
  })

  it('is parsed as a whole where a field is put in that stands further down too', () => {
    const text = 'strandline: 1\ntitle: A\nliquor: 20:1\nsteps: [rinse]\n'
    const twice = text.replace('title: A\n', 'title: A\nsteps: [air]\n')
    expect(reparsed(parseAnew(text), twice, parseAnew)).toBeNull()
    const once = text.replace('title: A\n', 'title: A\nabout: For wool\n')
    expect(reparsed(parseAnew(text), once, parseAnew)?.located).toEqual(parseAnew(once).located)
  })
})
