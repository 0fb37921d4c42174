// Ways in which a protocol's text gets damaged: by a slip of the hand, a lost piece, a bad disk, or on purpose.
import type { Chance } from '../../simulation/chance.ts'

const put = [
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
  '&a ',
  '*a',
  '!t ',
  '\t',
  '\r',
  '\u202e',
  '\u0000',
  '\ud800',
  '0',
  '-',
  'null',
  '~',
  '---\n',
  '9'.repeat(40),
  '{{',
  '__proto__: ',
  '🧶'
]
const values = [
  'true',
  '-1',
  '1e999',
  '61',
  '.nan',
  '[]',
  '{}',
  '"{band}"',
  '10 min after all in',
  '0 °C',
  'at least',
  ''
]

export type Damage = (text: string, chance: Chance, texts: readonly string[]) => string

const placeIn = (text: string, chance: Chance): number => chance.whole(0, text.length)

function withLines(text: string, change: (lines: string[], at: number) => void, chance: Chance): string {
  const lines = text.split('\n')
  change(lines, chance.whole(0, lines.length - 1))
  return lines.join('\n')
}

/** How many lines after this one are indented deeper than it. */
function deeperAfter(lines: string[], at: number): number {
  const indent = (line: string): number => line.length - line.trimStart().length
  const end = lines.findIndex((line, i) => i > at && indent(line) <= indent(lines[at] ?? ''))
  return (end < 0 ? lines.length : end) - at - 1
}

/** A slip of the hand in an editor. */
export const slips: Record<string, Damage> = {
  'sign put in': (text, chance) => {
    const at = placeIn(text, chance)
    return text.slice(0, at) + chance.pick(put) + text.slice(at + chance.whole(0, 3))
  },
  'line lost': (text, chance) => withLines(text, (lines, at) => lines.splice(at, 1), chance),
  'lost under a line': (text, chance) => {
    const lines = text.split('\n')
    const heads = lines.flatMap((line, i) => (line.endsWith(':') ? [i] : []))
    const at = heads.length > 0 ? chance.pick(heads) : 0
    lines.splice(at + 1, deeperAfter(lines, at))
    return lines.join('\n')
  },
  'line twice': (text, chance) => withLines(text, (lines, at) => lines.splice(at, 0, lines[at] ?? ''), chance),
  'line elsewhere': (text, chance) =>
    withLines(
      text,
      (lines, at) => lines.splice(chance.whole(0, lines.length - 1), 0, lines.splice(at, 1)[0] ?? ''),
      chance
    ),
  'line indented': (text, chance) =>
    withLines(text, (lines, at) => lines.splice(at, 1, `${' '.repeat(chance.whole(1, 5))}${lines[at]}`), chance),
  'value changed': (text, chance) =>
    withLines(
      text,
      (lines, at) => lines.splice(at, 1, (lines[at] ?? '').replace(/: .*$/, `: ${chance.pick(values)}`)),
      chance
    )
}

/** What a disk, a download or a message does to a text. */
export const losses: Record<string, Damage> = {
  'cut off': (text, chance) => text.slice(0, placeIn(text, chance)),
  'beginning lost': (text, chance) => text.slice(placeIn(text, chance)),
  'piece lost': (text, chance) => {
    const at = placeIn(text, chance)
    return text.slice(0, at) + text.slice(at + chance.whole(1, 200))
  },
  'two halves': (text, chance, texts) => {
    const other = chance.pick(texts)
    return text.slice(0, placeIn(text, chance)) + other.slice(placeIn(other, chance))
  },
  'bytes turned': (text, chance) => {
    const bytes = Buffer.from(text, 'utf8')
    for (let i = chance.whole(1, 20); i > 0; i--) bytes[chance.whole(0, bytes.length - 1)] = chance.whole(0, 255)
    return bytes.toString('utf8')
  }
}

/** Nothing that ever was a protocol. */
export const noise: Record<string, Damage> = {
  'random bytes': (_, chance) =>
    Buffer.from(Array.from({ length: chance.whole(0, 400) }, () => chance.whole(0, 255))).toString('latin1'),
  'random signs': (_, chance) => Array.from({ length: chance.whole(1, 120) }, () => chance.pick(put)).join('')
}
