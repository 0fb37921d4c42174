// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest'
import { bringIn } from '../../src/app/bring-in.ts'
import { keptDrafts } from '../../src/app/drafts.ts'
import { outlineOf } from '../../src/core/protocol/edit/rows.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'

const good = 'strandline: 1\ntitle: Rinse\nsteps:\n- rinse\n'

function table(kept = memoryKept()) {
  const drafts = keptDrafts(kept)
  let ids = 0
  const bring = (content: BlobPart, name = 'mine.yaml') =>
    bringIn(new File([content], name), drafts, `d${++ids}`, 1_000)
  return { drafts, bring }
}

/** What the workshop tells of a text that was brought in: the first line with a problem, and all words. */
async function problemsOf(text: string): Promise<string> {
  const { drafts, bring } = table()
  const came = await bring(text)
  if (!came.ok) throw new Error(came.problem.what)
  expect(came.runs).toBe(false)
  const draft = await drafts.read(came.draftId)
  expect(draft?.text).toBe(text)
  const { rows, problems } = outlineOf(draft?.text ?? '')
  return [...problems, ...rows.flatMap((row) => row.problems)]
    .map(({ line, what, instead }) => `${line}: ${what} ${instead}`)
    .join('\n')
}

describe('what comes from outside', () => {
  it('and can be run lies among the drafts, as what it came as', async () => {
    const { drafts, bring } = table()
    expect(await bring(good)).toEqual({ ok: true, name: 'mine.yaml', title: 'Rinse', draftId: 'd1', runs: true })
    expect(await drafts.read('d1')).toMatchObject({ text: good, title: 'Rinse', cameAs: 'mine.yaml' })
    expect((await drafts.list()).drafts).toEqual([
      { id: 'd1', title: 'Rinse', changedAtMs: 1_000, cameAs: 'mine.yaml' }
    ])
  })

  it('twice, and undecided between, is one draft; changed since, it is another', async () => {
    const { drafts, bring } = table()
    await bring(good)
    expect(await bring(good)).toMatchObject({ draftId: 'd1' })
    const draft = await drafts.read('d1')
    if (draft) await drafts.keep({ ...draft, text: `${good}- spin\n` })
    expect(await bring(good)).toMatchObject({ draftId: 'd3' })
    expect((await drafts.read('d1'))?.text).toBe(`${good}- spin\n`)
  })

  it('with problems loses nothing: its text is a draft under the name of its file', async () => {
    const { drafts, bring } = table()
    const text = 'steps: [hoover\n'
    expect(await bring(text, 'my recipe.yml')).toMatchObject({ ok: true, title: 'my recipe', runs: false })
    expect((await drafts.read('d1'))?.text).toBe(text)
  })

  it('and can’t be kept is there until the page is closed', async () => {
    const kept = { ...memoryKept(), set: () => Promise.reject(new Error('full')) }
    const { drafts, bring } = table(kept)
    expect(await bring(good)).toMatchObject({ ok: true })
    expect((await drafts.read('d1'))?.text).toBe(good)
  })

  it('and is no text, or empty, is refused with the reason, and leaves no draft', async () => {
    const { drafts, bring } = table()
    const whys: (string | null)[] = []
    for (const content of [new Uint8Array([1, 0, 2, 3, 4, 5, 6, 7]), ' \n\t', 'x'.repeat(300_000)]) {
      const came = await bring(content)
      whys.push(came.ok ? null : came.problem.code)
      if (!came.ok) expect(came.problem).toMatchObject({ line: 1, instead: expect.stringMatching(/\w{3}/) })
    }
    expect(whys).toEqual(['file-not-text', 'file-empty', 'file-too-large'])
    expect((await drafts.list()).drafts).toEqual([])
  })

  it.each([
    ['nesting', `strandline: 1\ntitle: x\nsteps: ${'['.repeat(40)}${']'.repeat(40)}\n`, /^3: .*within 24 levels/],
    ['lines', `strandline: 1\n${'\n'.repeat(6_100)}title: x\n`, /^6000: .*more than 6000 lines/],
    ['signs', `strandline: 1\ntitle: x\nsteps: [${'a,'.repeat(10_001)}]\n`, /^3: .*more than 10000 brackets/],
    [
      'steps',
      `strandline: 1\ntitle: x\nsteps:\n${'- spin\n'.repeat(501)}`,
      /^4: 501 steps are written. keep them to 500/
    ],
    [
      'steps of loops in loops',
      'strandline: 1\ntitle: x\nsteps:\n- repeat: {times: 60, steps: [repeat: {times: 60, steps: [rinse]}]}\n',
      /^4: .*3600 steps. keep them to 2000/
    ],
    ['repeats', 'strandline: 1\ntitle: x\nsteps:\n- repeat: {times: 61, steps: [rinse]}\n', /^4: .*60/],
    ['length', 'strandline: 1\ntitle: x\nsteps:\n- hold: 61 days\n- hold: 61 days\n', /60 days/],
    ['characters that hide', 'strandline: 1\ntitle: "a\u202Eb"\nsteps: [rinse]\n', /^2: .*U\+202E/]
  ])('over the limit of %s is told the limit, the line, and what would be right', async (_, text, expected) => {
    expect(await problemsOf(text)).toMatch(expected)
  })
})
