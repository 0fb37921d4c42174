// From text to a located tree: bounded, one document, no anchors, no tags, no key twice.
import { Composer, type CST, type Document, isAlias, isMap, isScalar, isSeq, type ParsedNode, Parser } from 'yaml'
import type { Problem } from '../model.ts'
import type { OwnProblemCode } from '../problem-codes.ts'
import { forbiddenAt, nameOfCharacter } from './characters.ts'
import { tooDeepAt } from './depth.ts'
import { bytesMost, depthMost, linesMost, type RoughProblem, roughProblem, signsMost } from './limits.ts'
import { Lines } from './lines.ts'
import type { Entry, Located, Place } from './located.ts'

type Source = { ok: true; root: Located } | { ok: false; problems: Problem[] }

/** A text taken apart as far as it goes. `root` and `document` may be there beside problems: a half-written file still
 * shows what can be shown. Both are null where no parser may have the text, or nothing is in it. */
export type ParsedSource = {
  problems: Problem[]
  root: Located | null
  document: Document.Parsed | null
  tokens: readonly CST.Token[]
}

/** Reads YAML 1.2 (core schema; JSON is a part of it) from untrusted text. Never throws. */
export function readSource(raw: string): Source {
  const { problems, root } = parseSource(raw, false)
  return root === null || problems.length > 0 ? { ok: false, problems } : { ok: true, root }
}

/** The same with what was found in spite of problems. `keepTokens`: every node knows its tokens, for who changes the
 * text. Offsets count from after a byte order mark. Never throws. */
export function parseSource(raw: string, keepTokens: boolean): ParsedSource {
  const rough = roughProblem(raw)
  if (rough) return nothing(sayRough(rough, new Lines(raw.slice(0, bytesMost)).place(rough.offset)))
  // A byte order mark is what some editors put first; it is no part of the text.
  const text = raw.startsWith('\uFEFF') ? raw.slice(1) : raw
  const bad = forbiddenAt(text)
  if (bad >= 0) return nothing(sayForbidden(nameOfCharacter(text, bad), new Lines(text).place(bad)))
  return compose(text, keepTokens)
}

function nothing(problem: Problem): ParsedSource {
  return { problems: [problem], root: null, document: null, tokens: [] }
}

function compose(text: string, keepSourceTokens: boolean): ParsedSource {
  const lines = new Lines(text)
  const tokens = [...new Parser().parse(text)]
  const deep = tooDeepAt(tokens, depthMost)
  if (deep !== null) return nothing(sayNested(lines.place(deep)))
  // Pretty errors quote the text around each of them, which takes quadratic time on hostile text.
  const composer = new Composer({
    prettyErrors: false,
    uniqueKeys: false,
    version: '1.2',
    schema: 'core',
    strict: true,
    keepSourceTokens
  })
  return { ...convert([...composer.compose(tokens, true, text.length)], lines), tokens }
}

function convert(documents: readonly Document.Parsed[], lines: Lines): Omit<ParsedSource, 'tokens'> {
  const reading = new Converter(lines)
  const { problems } = reading
  const [first, second] = documents
  for (const document of documents.slice(0, 2)) {
    for (const error of document.errors.slice(0, 50)) reading.syntax(error.code, error.message, error.pos[0])
  }
  if (second) {
    const at = second.range[0]
    reading.say(
      'many-documents',
      at,
      'The file holds more than one document.',
      'Keep one protocol in a file: no --- line.'
    )
  }
  const contents = first?.contents
  if (!first || !contents) {
    if (problems.length === 0) problems.push(sayEmpty({ line: 1, column: 1 }))
    return { problems, root: null, document: null }
  }
  return { root: reading.node(contents as ParsedNode), document: first, problems }
}

class Converter {
  readonly problems: Problem[] = []
  readonly lines: Lines

  constructor(lines: Lines) {
    this.lines = lines
  }

  say(code: OwnProblemCode, offset: number, what: string, instead: string): void {
    this.problems.push({ code, ...this.lines.place(offset), where: '', what, instead })
  }

  syntax(code: string, message: string, offset: number): void {
    if (code === 'TAB_AS_INDENT') {
      this.say('tab-indent', offset, 'The line is indented with a tab.', 'Indent with spaces.')
      return
    }
    if (code === 'BAD_ALIAS') {
      this.say('anchor', offset, 'Anchors and aliases are not read.', 'Write the value where it stands.')
      return
    }
    const [hint] = message.split('\n')
    this.say(
      'not-yaml',
      offset,
      `This is not YAML: ${hint?.slice(0, 120)}`,
      'Look at indentation, quotes and brackets.'
    )
  }

  node(node: ParsedNode): Located {
    const offset = node.range?.[0] ?? 0
    const at = this.lines.place(offset)
    if (isAlias(node) || node.anchor) {
      this.say('anchor', offset, 'Anchors and aliases are not read.', 'Write the value where it stands.')
    }
    if (!isAlias(node) && node.tag) {
      this.say(
        'tag',
        offset,
        `The tag ${node.tag.slice(0, 40)} is not read.`,
        'Leave the tag away; the field says what it is.'
      )
    }
    if (isMap(node)) return { kind: 'map', at, entries: this.entries(node.items as never) }
    if (isSeq(node)) return { kind: 'list', at, items: node.items.map((i) => this.node(i as ParsedNode)) }
    return { kind: 'scalar', at, value: isScalar(node) ? this.scalar(node.value, offset) : null }
  }

  entries(pairs: { key: ParsedNode | null; value: ParsedNode | null }[]): Entry[] {
    const seen = new Set<string>()
    const entries: Entry[] = []
    for (const { key, value } of pairs) {
      const offset = key?.range?.[0] ?? value?.range?.[0] ?? 0
      const keyAt = this.lines.place(offset)
      if (!isScalar(key) || key.value === null) {
        this.say('not-yaml', offset, 'A field has no plain name.', 'Write a name before the colon.')
        continue
      }
      if (key.anchor || key.tag) this.node(key)
      const name = String(this.scalar(key.value, offset))
      if (seen.has(name)) {
        this.say('duplicate-key', offset, `${name.slice(0, 40)} is given twice.`, 'Keep one of the two.')
        continue
      }
      seen.add(name)
      const missing: Located = { kind: 'scalar', at: keyAt, value: null }
      entries.push({ key: name, keyAt, value: value ? this.node(value) : missing })
    }
    return entries
  }

  scalar(value: unknown, offset: number): string | number | boolean | null {
    if (typeof value === 'bigint') return Number(value)
    if (typeof value === 'number' || typeof value === 'boolean' || value === null) return value
    const text = String(value)
    // Escapes in double quotes can bring back what the raw text was searched for.
    const bad = forbiddenAt(text)
    if (bad >= 0) this.problems.push(sayForbidden(nameOfCharacter(text, bad), this.lines.place(offset)))
    return text
  }
}

function sayForbidden(name: string, at: Place): Problem {
  const what = `The character ${name} does not show as what it is.`
  return { code: 'forbidden-character', ...at, where: '', what, instead: 'Take it out, or write it in plain letters.' }
}

/** Which limit it is, and what it is: a writer can't keep to what nobody names. */
function sayRough(rough: RoughProblem, at: Place): Problem {
  if (rough.code !== 'too-large') return rough.code === 'nested-too-deep' ? sayNested(at) : sayEmpty(at)
  const most = {
    bytes: `${bytesMost / 1024} kB`,
    lines: `${linesMost} lines`,
    signs: `${signsMost} brackets, commas, colons, dashes and quotes`
  }[rough.of]
  const what = `The file has more than ${most}.`
  return { code: 'too-large', ...at, where: '', what, instead: 'Cut it, or make two protocols of it.' }
}

function sayNested(at: Place): Problem {
  const what = 'Lists and fields lie too deep in each other.'
  return { code: 'nested-too-deep', ...at, where: '', what, instead: `Keep it within ${depthMost} levels.` }
}

function sayEmpty(at: Place): Problem {
  const instead = 'Begin with strandline: 1, a title and steps.'
  return { code: 'empty-file', ...at, where: '', what: 'The file is empty.', instead }
}
