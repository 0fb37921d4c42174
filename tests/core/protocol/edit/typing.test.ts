// What a letter costs, counted and not timed: a machine at work would make a clock say anything.
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { outlineOf } from '../../../../src/core/protocol/edit/rows.ts'
import { dataOf, parse, parseAnew } from '../../../../src/core/protocol/edit/tree.ts'
import type { Protocol } from '../../../../src/core/protocol/model.ts'
import { trialProgramme } from '../../../../src/core/protocol/programme/trial.ts'
import { readLocated } from '../../../../src/core/protocol/read.ts'
import { stepKinds } from '../../../../src/core/protocol/schema/step-kinds.ts'
import { Chance } from '../../../simulation/chance.ts'
import { anyText } from './any-text.ts'

const seed = 20310711
const builtIns = readdirSync('protocols')
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => readFileSync(`protocols/${file}`, 'utf8'))

const pieces = ['a', '7', ' ', '\n', '# ', '\n  - rinse', ' min', '-', ': ', '{', '\n\n', '# more\n', '']

afterEach(() => void vi.restoreAllMocks())

/** All that is said of a text, and what it comes to. */
const said = (text: string, taken: typeof parse): string => {
  const { located, root, problems } = taken(text)
  const read = located && problems.length === 0 ? readLocated(located) : null
  return JSON.stringify([root && dataOf(root), read, read?.ok && trialProgramme(read.protocol)])
}

/** What comes of it, and how often a step was worked out for that. */
const counted = <T>(work: () => T): { made: T; drafts: number } => {
  const spies = Object.values(stepKinds).map((kind) => vi.spyOn(kind, 'draft'))
  const made = work()
  return { made, drafts: spies.reduce((sum, spy) => sum + spy.mock.calls.length, 0) }
}

const LINES = 60
const steps = Array.from({ length: LINES }, (_, i) => `  - hold: {for: ${i + 5} min, id: h${i}}\n`).join('')
const TEXT = `# mine\nstrandline: 1\ntitle: Long\nliquor: 20:1\nmaterials:\n  acid: {kind: acid, strength: 5 %}\nsteps:\n  - fill: 2 L\n  - repeat:\n      times: 2\n      steps:\n        - rinse\n        - squeeze\n${steps}  - rinse\n`

const protocolOf = (text: string): Protocol => {
  const { protocol, rows, problems } = outlineOf(text)
  if (!protocol) throw new Error(JSON.stringify([problems, rows.flatMap((row) => row.problems)]))
  return protocol
}

const onlySaid: [string, (text: string) => string][] = [
  ['a letter in the title', (text) => text.replace('title: Long', 'title: Longer')],
  ['a letter in a comment at the top', (text) => text.replace('# mine', '# mine too')],
  ['an empty line at the top', (text) => `\n${text}`],
  ['a comment among the steps', (text) => text.replace('  - hold: {for: 5 min', '  # then\n  - hold: {for: 5 min')],
  ['a comment behind a step', (text) => text.replace('id: h30}', 'id: h30} # by the clock')],
  ['a note put in above the steps', (text) => text.replace('liquor', 'about: For wool\nliquor')]
]

describe('what is typed into a text', () => {
  it(`is answered as if the whole had been read anew, whatever it is (seed ${seed})`, () => {
    const chance = new Chance(seed)
    let sound = 0
    for (const start of [...builtIns, ...fc.sample(anyText, { numRuns: 15, seed }).map(({ text }) => text)]) {
      let text = start
      const typed: [string, string][] = []
      for (let i = 0; i < 3; i++) {
        const from = chance.whole(0, text.length)
        const after = text.slice(0, from) + chance.pick(pieces) + text.slice(from + chance.whole(0, 2))
        const now = said(after, parse)
        typed.push([after, now])
        // A text with a mistake in it is mended before long.
        if (!now.includes('"ok":true')) continue
        sound++
        text = after
      }
      // Later, so that nothing of it is known while the letters are typed.
      for (const [after, now] of typed) expect(now).toBe(said(after, parseAnew))
    }
    expect(sound).toBeGreaterThan(20)
  })

  for (const [what, change] of onlySaid) {
    it(`${what} has no step worked out again, and all but the one beside it stay the same`, () => {
      const before = protocolOf(TEXT)
      const { made: after, drafts } = counted(() => protocolOf(change(TEXT)))
      expect(drafts).toBe(0)
      expect(after).not.toBe(before)
      expect(after.steps).toEqual(before.steps)
      expect(after.steps.filter((step, i) => step !== before.steps[i]).length).toBeLessThanOrEqual(1)
      expect(trialProgramme(after)).toEqual(trialProgramme(readAnew(change(TEXT))))
    })
  }

  it('a letter in one step leaves all others the same', () => {
    const before = protocolOf(TEXT)
    const after = protocolOf(TEXT.replace('for: 30 min', 'for: 31 min'))
    expect(before.steps.filter((step, i) => step !== after.steps[i])).toHaveLength(1)
  })

  it('a letter in one step has that step alone worked out again, though the bath is colder after it', () => {
    const warm = TEXT.replace('title: Long', 'title: Long\nstart: 60 °C')
    const longer = warm.replace('for: 30 min', 'for: 32 min')
    protocolOf(warm)
    // Once to be tried out, once as it is written out.
    const { made, drafts } = counted(() => protocolOf(longer))
    expect(drafts).toBe(2)
    expect(trialProgramme(made)).toEqual(trialProgramme(readAnew(longer)))
  })

  it('a wait for a temperature is worked out again where the bath comes from the other side', () => {
    const text = (to: string): string =>
      TEXT.replace(
        '\n  - rinse\n',
        `\n  - heat: {to: ${to}, rate: 2 °C/min}\n  - wait: {until: 60 °C}\n  - heat: off\n`
      )
    const goingIn = (protocol: Protocol): unknown => {
      const made = trialProgramme(protocol)
      const waits = made.ok ? made.programme.steps.filter((step) => step.node === 'step' && step.word === 'wait') : []
      return waits.map((step) => step.node === 'step' && step.wait?.until)
    }
    expect(goingIn(protocolOf(text('40 °C')))).toEqual([[expect.objectContaining({ going: 'up' })]])
    expect(goingIn(protocolOf(text('80 °C')))).toEqual([[expect.objectContaining({ going: 'down' })]])
  })

  it('what the header says of the steps is heeded though they stay the same', () => {
    const text = TEXT.replace('\n  - rinse\n', '\n  - add: 10 mL of acid\n  - rinse\n')
    protocolOf(text)
    const { rows } = outlineOf(text.replace('acid: {kind', 'acids: {kind'))
    expect(rows.flatMap((row) => row.problems).map(({ code }) => code)).toEqual(['unknown-material'])
    const stronger = trialProgramme(protocolOf(text.replace('strength: 5 %', 'strength: 6 %')))
    expect(stronger.ok && stronger.programme.setOut.find(({ id }) => id === 'acid')?.percent).toBe(6)
  })
})

function readAnew(text: string): Protocol {
  const { located } = parseAnew(text)
  const read = located && readLocated(located)
  if (!read?.ok) throw new Error('it is not sound')
  return read.protocol
}
