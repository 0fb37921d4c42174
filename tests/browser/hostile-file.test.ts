import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

let stage: Stage
let visit: Visit
beforeAll(async () => {
  stage = await openStage()
  visit = await stage.visit()
})
afterAll(() => stage?.close())

/** Chooses a file on the Protocols screen, as from a disk. */
async function choose(name: string, content: string | Buffer): Promise<void> {
  const buffer = typeof content === 'string' ? Buffer.from(content) : content
  await visit.page.locator('input[type=file]').setInputFiles({ name, mimeType: 'text/yaml', buffer })
}

const spoken = async (place: string): Promise<string> =>
  ((await visit.page.locator(place).textContent()) ?? '').replace(/\s+/g, ' ')

/** What is no text at all is refused where it was chosen. */
async function refusalOf(name: string, content: string | Buffer): Promise<string> {
  const fold = visit.page.locator('details.protocols-bring')
  if (!(await fold.evaluate((node: HTMLDetailsElement) => node.open))) await fold.locator('summary').tap()
  await choose(name, content)
  await visit.page.locator('.protocols-problems', { hasText: name }).waitFor()
  return spoken('.protocols-problems')
}

/** What is text opens in the workshop with its problems, and the text as it came. */
async function problemsOf(name: string, content: string): Promise<string> {
  await choose(name, content)
  await visit.page.getByText(`From ${name}, not kept yet.`).waitFor()
  await visit.page.locator('.workshop-problems li').first().waitFor()
  expect(await visit.page.getByLabel('The text of the protocol').inputValue()).toBe(content)
  const said = await spoken('#workshop-problems')
  await visit.page.evaluate(() => (location.hash = '#/protocols'))
  await visit.page.getByRole('heading', { name: 'Protocols', level: 1 }).waitFor()
  return said
}

describe('a protocol file from anywhere', () => {
  beforeEach(async () => {
    await visit.page.goto(`${stage.host.address}?rehearse#/protocols`)
    await visit.page.getByRole('heading', { name: 'Protocols', level: 1 }).waitFor()
  })

  it('of 10 MB is refused at once, with the limit named', async () => {
    expect(await refusalOf('big.yaml', Buffer.alloc(10_000_000, 0x61))).toMatch(/256/)
  })

  it('that nests without end is told its line and column', async () => {
    const bomb = `strandline: 1\ntitle: x\nsteps: ${'['.repeat(20_000)}`
    expect(await problemsOf('bomb.yaml', bomb)).toMatch(/Line 3, column \d+ ?.*deep.*24 levels/)
  })

  it('with 10,000 steps is told the limit', async () => {
    const many = (count: number): string => `strandline: 1\ntitle: Many\nsteps:\n${'- spin\n'.repeat(count)}`
    expect(await problemsOf('many.yaml', many(10_000))).toMatch(/more than 6000 lines/)
    expect(await problemsOf('more.yaml', many(501))).toMatch(/500/)
  })

  it('that is empty, or no text at all, is told so', async () => {
    expect(await refusalOf('empty.yaml', '')).toMatch(/empty\.yaml is empty/)
    const noise = Buffer.from(Array.from({ length: 4_000 }, (_, i) => (i * 7919) % 256))
    expect(await refusalOf('noise.yaml', noise)).toMatch(/noise\.yaml is no text/)
  })

  it('with several slips gets them all, each with its place and what would be right', async () => {
    const text = 'strandline: 1\ntitle: Slips\nsteps:\n- hold: {fro: 6 min}\n- heet: {to: 80 °C}\n'
    const said = await problemsOf('slips.yaml', text)
    expect(said).toMatch(/Line 4, column \d+/)
    expect(said).toMatch(/Line 5, column \d+/)
    expect(said).toMatch(/heat/)
  })

  it('with a script in its title is shown as text and runs nothing', async () => {
    const title = '<img src=x onerror="window.ran = 1"><script>window.ran = 1</script>'
    await choose('sly.yaml', `strandline: 1\ntitle: '${title}'\nsteps:\n- spin\n`)
    await visit.page.getByRole('heading', { name: title }).first().waitFor()
    expect(await visit.page.evaluate(() => 'ran' in window)).toBe(false)
    expect(await visit.page.locator('main img, main script').count()).toBe(0)
  })

  it('leaves the page answering: a built-in opens after all of it', async () => {
    await visit.page.getByText('Dip gradient', { exact: true }).first().tap()
    await visit.page.getByRole('heading', { name: 'Dip gradient', level: 1 }).waitFor()
  })
})
