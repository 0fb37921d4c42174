import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse as parseYaml } from 'yaml'
import { type Data, type Path, same } from '../../../../src/core/protocol/edit/data.ts'
import { applyEdit, type Edit } from '../../../../src/core/protocol/edit/edit.ts'
import { outlineOf } from '../../../../src/core/protocol/edit/rows.ts'
import { readProtocol } from '../../../../src/core/protocol/read.ts'
import { at2, type Dice, dice, editFor, model, places } from './any-edit.ts'
import { anyText, commentsOf } from './any-text.ts'

const seed = 20310614
const dataIn = (text: string): Data => parseYaml(text) as Data

/** What a reader makes of a text, lines aside; of a text with mistakes, what they are. */
const meaning = (text: string): unknown => {
  const read = readProtocol(text)
  if (!read.ok) return read.problems.map(({ code, what }) => `${code} ${what}`).sort()
  return JSON.parse(JSON.stringify(read.protocol, (key, value) => (key === 'line' ? undefined : value)))
}
const meaningOf = (data: Data): unknown => meaning(JSON.stringify(data))

const done = (text: string, edit: Edit): { text: string; path: Path } => {
  const made = applyEdit(text, edit)
  if (!made.ok) throw new Error(`${made.problem}\n${JSON.stringify(edit)}\n${text}`)
  return made
}

describe('any valid protocol, in any style', () => {
  it(`edited by a row of form edits says what the same changes of its data say (seed ${seed})`, () => {
    let edits = 0
    let refused = 0
    fc.assert(
      fc.property(anyText, fc.array(dice, { minLength: 1, maxLength: 6 }), (start, row) => {
        let { text } = start
        let data = start.data
        for (const roll of row) {
          const edit = editFor(data, roll)
          if (places(data).steps.length === 0 && edit.type !== 'add') continue
          const made = applyEdit(text, edit)
          edits++
          if (edit.type === 'duplicate') {
            if (!made.ok) throw new Error(made.problem)
            text = made.text
            data = dataIn(text)
            continue
          }
          const thing = made.ok ? at2(dataIn(made.text), made.path) : undefined
          const expected = model(data, edit, thing)
          if (!made.ok) {
            refused++
            if (expected !== null) throw new Error(`refused: ${made.problem} ${JSON.stringify(edit)}\n${text}`)
            continue
          }
          if (expected === null) throw new Error(`not refused: ${JSON.stringify(edit)}`)
          expect(meaning(made.text), `${JSON.stringify(edit)}\n${text}\n----\n${made.text}`).toEqual(
            meaningOf(expected)
          )
          text = made.text
          data = dataIn(text)
        }
      }),
      { numRuns: 150, seed }
    )
    // Or little would have been proved.
    expect(refused).toBeLessThan(edits / 3)
    expect(edits).toBeGreaterThan(300)
  }, 120_000)

  it(`comments survive every edit elsewhere (seed ${seed})`, () => {
    let kept = 0
    fc.assert(
      fc.property(anyText, dice, ({ text, data }, roll) => {
        if (places(data).steps.length === 0) return
        const edit = editFor(data, roll)
        const made = applyEdit(text, edit)
        if (!made.ok) return
        const before = commentsOf(text)
        const after = new Set(commentsOf(made.text))
        const lost = before.filter((note) => !after.has(note))
        kept += before.length - lost.length
        if (edit.type !== 'remove') expect(lost, `${JSON.stringify(edit)}\n${text}\n----\n${made.text}`).toEqual([])
        else
          for (const note of lost)
            expect(linesOf(text, edit.path), `${note}\n${text}\n----\n${made.text}`).toContain(note)
      }),
      { numRuns: 300, seed }
    )
    expect(kept).toBeGreaterThan(300)
  }, 120_000)

  it(`no line changes but those of the step whose field is set or taken away (seed ${seed})`, () => {
    let changed = 0
    fc.assert(
      fc.property(anyText, dice, fc.boolean(), ({ text, data, style }, roll, set) => {
        if (places(data).steps.length === 0 || style === 'json') return
        const edit = editFor(data, { ...roll, kind: set ? 0 : 3 })
        const made = applyEdit(text, edit)
        if (!made.ok || made.text === text || !('path' in edit)) return
        const row = outlineOf(text).rows.find(({ path }) => same([...path], [...edit.path]))
        if (!row) throw new Error(JSON.stringify(edit))
        const before = text.split('\n')
        const after = made.text.split('\n')
        const behind = before.length - row.lines.to
        expect(after.slice(0, row.lines.from - 1)).toEqual(before.slice(0, row.lines.from - 1))
        expect(after.slice(after.length - behind)).toEqual(before.slice(row.lines.to))
        changed++
      }),
      { numRuns: 300, seed }
    )
    expect(changed).toBeGreaterThan(100)
  }, 120_000)

  const pairs: Record<string, (data: Data, roll: Dice, text: string) => string | null> = {
    'add, then remove': (data, { at, value }, text) => {
      const { lists } = places(data)
      const parent = lists[at % lists.length] as Path
      const added = done(text, { type: 'add', parent, index: value % 4, kind: 'turn' })
      return done(added.text, { type: 'remove', path: added.path }).text
    },
    'a move there and back': (data, roll, text) => {
      const edit = editFor(data, { ...roll, kind: 6 })
      if (edit.type !== 'move') return null
      const there = applyEdit(text, edit)
      if (!there.ok) return null
      const from = edit.from
      const after = dataIn(there.text)
      const parent = from.slice(0, -1)
      const back = { parent: backPath(parent, there.path), index: Number(from.at(-1)) }
      if (!Array.isArray(at2(after, back.parent))) return null
      return done(there.text, { type: 'move', from: there.path, to: back }).text
    },
    'wrap, then unwrap': (data, roll, text) => {
      const made = done(text, editFor(data, { ...roll, kind: 8 }))
      return done(made.text, { type: 'unwrap', path: made.path }).text
    },
    'duplicate, then remove': (data, roll, text) => {
      const made = done(text, editFor(data, { ...roll, kind: 10 }))
      return done(made.text, { type: 'remove', path: made.path }).text
    }
  }

  for (const [name, pair] of Object.entries(pairs)) {
    it(`${name} leaves the protocol and its comments as they were (seed ${seed})`, () => {
      let tried = 0
      fc.assert(
        fc.property(anyText, dice, ({ text, data }, roll) => {
          if (places(data).steps.length === 0) return
          const back = pair(data, roll, text)
          if (back === null) return
          tried++
          const now = dataIn(back)
          expect(same(now, data), `${text}\n----\n${back}`).toBe(true)
          expect(meaning(back)).toEqual(meaning(text))
          expect([...commentsOf(back)].sort()).toEqual([...commentsOf(text)].sort())
        }),
        { numRuns: 150, seed }
      )
      expect(tried).toBeGreaterThan(60)
    }, 120_000)
  }

  it(`setting a field to what it is leaves the text as it is, to the byte (seed ${seed})`, () => {
    let set = 0
    fc.assert(
      fc.property(anyText, ({ text, data }) => {
        for (const { list, index } of places(data).steps) {
          const item = at2(data, [...list, index])
          if (typeof item !== 'object' || item === null) continue
          const fields = Object.values(item)[0]
          if (typeof fields !== 'object' || fields === null || Array.isArray(fields)) continue
          for (const [field, value] of Object.entries(fields)) {
            expect(done(text, { type: 'set', path: [...list, index], field, value }).text).toBe(text)
            set++
          }
        }
      }),
      { numRuns: 60, seed }
    )
    expect(set).toBeGreaterThan(100)
  }, 60_000)
})

/** The text of the lines of a path, as a plain search for its comments. */
function linesOf(text: string, path: Path): string {
  const without = applyEdit(text, { type: 'remove', path })
  if (!without.ok) return ''
  const kept = new Set(without.text.split('\n'))
  return text
    .split('\n')
    .filter((line) => !kept.has(line))
    .join('\n')
}

/** Where a list is after something came in front of what holds it. */
function backPath(parent: Path, came: Path): Path {
  const list = came.slice(0, -1)
  const at = list.length
  const starts = list.length < parent.length && list.every((part, i) => part === parent[i])
  const own = parent[at]
  if (!starts || typeof own !== 'number' || own < Number(came.at(-1))) return parent
  return [...parent.slice(0, at), own + 1, ...parent.slice(at + 1)]
}

describe('no edit throws', () => {
  const folder = new URL('../../../../protocols/', import.meta.url)
  const built = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))

  it(`on the built-in protocols, cut and scarred (seed ${seed})`, () => {
    let made = 0
    const part = fc.oneof(
      fc.nat(20),
      fc.constantFrom('steps', 'inputs', 'gaps', 'repeat', 'until', 'answers', '__proto__')
    )
    const path = fc.oneof(
      fc.array(part, { maxLength: 6 }),
      fc.nat(12).map((n) => ['steps', n]),
      fc.constantFrom<(string | number)[]>([], ['steps'], ['inputs', 'bands'], ['materials', 'acid'], ['gaps', 0])
    )
    const edit: fc.Arbitrary<Edit> = fc.oneof(
      fc.record({
        type: fc.constant('set' as const),
        path,
        field: fc.constantFrom('for', 'at', 'title', '__proto__'),
        value: fc.jsonValue() as fc.Arbitrary<Data>
      }),
      fc.record({ type: fc.constant('unset' as const), path, field: fc.constantFrom('for', 'at', 'title') }),
      fc.record({ type: fc.constant('remove' as const), path }),
      fc.record({ type: fc.constant('unwrap' as const), path }),
      fc.record({ type: fc.constant('duplicate' as const), path }),
      fc.record({
        type: fc.constant('rename' as const),
        path,
        to: fc.constantFrom('hold', 'x y', '', '__proto__', 'a: b')
      }),
      fc.record({
        type: fc.constant('add' as const),
        parent: path,
        index: fc.integer(),
        kind: fc.constantFrom('hold', 'input', 'material', 'gap', 'nothing')
      }),
      fc.record({
        type: fc.constant('move' as const),
        from: path,
        to: fc.record({ parent: path, index: fc.integer() })
      }),
      fc.record({
        type: fc.constant('wrap' as const),
        path,
        count: fc.integer(),
        in: fc.constantFrom('repeat', 'choice', 'hold')
      })
    )
    const wound = fc.record({
      text: fc.constantFrom(...built),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      drop: fc.nat(30),
      put: fc.constantFrom('', '\n', '- ', ': ', '{', ']', '"', '#', '? ', '&a ', '\t', '---\n', '\u202e')
    })
    fc.assert(
      fc.property(wound, fc.array(edit, { minLength: 1, maxLength: 4 }), ({ text, at, drop, put }, edits) => {
        const place = Math.floor(at * text.length)
        const damaged = text.slice(0, place) + put + text.slice(place + drop)
        for (const one of edits) {
          const answer = applyEdit(damaged, one)
          if (answer.ok) made++
          else expect(answer.problem).toMatch(/\w{3}/)
        }
      }),
      { numRuns: 400, seed }
    )
    expect(made).toBeGreaterThan(20)
  }, 120_000)
})
