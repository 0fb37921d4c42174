// Protocols on their way out and in: as files, by the clipboard, by the share sheet, dropped, and opened with the app.
import { readFileSync } from 'node:fs'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PotEntry } from '../../src/session/ports.ts'
import type { Kitchen } from '../../src/ui/kitchen.ts'
import { startPot } from './stage/dyer.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { pressUntilGone, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const dip = readFileSync('protocols/dip-cycles.yaml', 'utf8')
const theirs = dip.replace('title: Dip cycles', 'title: Their dips')
/** The same with more to say. */
const newer = theirs.replace('\nsteps:\n', '\nsteps:\n  - note: From another hand\n')
const tooDeep = `strandline: 1\ntitle: Deep\nsteps: ${'['.repeat(40)}${']'.repeat(40)}\n`

const pad = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true })
const heading = (page: Page, name: string): Promise<void> => page.getByRole('heading', { name, level: 1 }).waitFor()
const routeOf = (page: Page): Promise<string> => page.evaluate(() => location.hash)

async function visitAt(route: string, visit: Promise<Visit> = stage.visit()): Promise<Visit> {
  const visited = await visit
  await visited.page.goto(`${stage.host.address}?rehearse=60${route}`)
  return visited
}

/** The text of what the browser saves while something is pressed. */
async function savedBy(page: Page, press: Locator): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), press.tap()])
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') }
}

async function choose(page: Page, name: string, text: string): Promise<void> {
  await heading(page, 'Protocols')
  await page.locator('input[type=file]').setInputFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) })
}

async function openPaste(page: Page): Promise<void> {
  await heading(page, 'Protocols')
  await page.getByText('Bring a protocol in', { exact: true }).tap()
}

type Named = { name: string; text: string }

/** Drops files on the page, as a hand with a mouse does. */
async function drop(page: Page, files: Named[]): Promise<void> {
  const dataTransfer = await page.evaluateHandle((given) => {
    const held = new DataTransfer()
    for (const { name, text } of given) held.items.add(new File([text], name))
    return held
  }, files)
  await page.dispatchEvent('body', 'dragover', { dataTransfer })
  await page.dispatchEvent('body', 'drop', { dataTransfer })
}

type Handle = { strandlineRehearsal: { kitchen: Kitchen } }

/** What the pot does by itself while it waits for an answer. */
const isNoCall = ({ event }: PotEntry): boolean => event.type !== 'AlertRaised'

type Consumer = (params: { files: { name: string; getFile(): Promise<File> }[] }) => void
type Launches = { launchQueueConsumer?: Consumer }

/** A file manager that opens files with the app. Runs before the page: it holds nothing of ours. */
function fileManager(): void {
  const launchQueue = {
    setConsumer(consumer: Consumer) {
      ;(globalThis as Launches).launchQueueConsumer = consumer
    }
  }
  Object.defineProperty(globalThis, 'launchQueue', { value: launchQueue })
}

async function launch(page: Page, file: Named): Promise<void> {
  await page.waitForFunction(() => (globalThis as Launches).launchQueueConsumer)
  await page.evaluate(({ name, text }) => {
    const opened = new File([text], name, { lastModified: 1 })
    ;(globalThis as Launches).launchQueueConsumer?.({ files: [{ name, getFile: async () => opened }] })
  }, file)
}

describe('a protocol as a file', () => {
  it('is saved whole, and on another device read, kept, and there on the next visit', async () => {
    const { page, context } = await visitAt('#/protocols/dip-cycles')
    await pad(page, 'Share').tap()
    const saved = await savedBy(page, pad(page, 'Save as a file'))
    expect(saved).toEqual({ name: 'Dip cycles.yaml', text: dip })
    await context.close()

    const other = await visitAt('#/protocols')
    await choose(other.page, saved.name, saved.text)
    await other.page.getByText('It is here already, word for word.').waitFor()
    await other.page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await choose(other.page, 'theirs.yaml', theirs)
    await heading(other.page, 'Their dips')
    await other.page.reload()
    await pad(other.page, 'Keep it').tap()
    await pad(other.page, 'Start a pot').waitFor()
    await other.page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await other.page.reload()
    await other.page.getByText(/from theirs\.yaml/).waitFor()
    expect(other.complaints).toEqual([])
    await other.context.close()
  })

  it('of a title that is here becomes what the dyer says, and the one that is here stays', async () => {
    const { page, context, complaints } = await visitAt('#/protocols')
    await choose(page, 'theirs.yaml', theirs)
    await pad(page, 'Keep it').tap()
    await pad(page, 'Start a pot').waitFor()

    await pad(page, 'All protocols').tap()
    await choose(page, 'theirs.yaml', newer)
    await page.getByText(/Another Their dips is here: version 1, saved today/).waitFor()
    await page.getByText('What is different').tap()
    await page.getByText('Now From another hand', { exact: true }).waitFor()
    await pad(page, 'Keep it as another protocol').tap()
    await heading(page, 'Their dips, 2')

    await pad(page, 'All protocols').tap()
    await choose(page, 'again.yaml', newer)
    const earlier = page.getByText('Earlier versions (1)')
    await pressUntilThere(pad(page, 'Keep it as version 2 of Their dips'), earlier)
    await earlier.tap()
    await page.getByLabel('Was').waitFor()
    await pad(page, 'Share what was').tap()
    expect((await savedBy(page, pad(page, 'Save as a file'))).text).toBe(theirs)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('of a draft is shared as it stands, problems and all', async () => {
    const { page, context } = await visitAt('#/protocols')
    const half = 'strandline: 1\ntitle: Half\nsteps:\n- hoover\n'
    await choose(page, 'half.yaml', half)
    await heading(page, 'Half')
    await page.getByText('Line 4, column 3').waitFor()
    await pad(page, 'Share').tap()
    expect(await savedBy(page, pad(page, 'Save as a file'))).toEqual({ name: 'Half.yaml', text: half })
    await context.close()
  })
})

describe('the clipboard', () => {
  it('where it is allowed takes a text and gives it back on another screen', async () => {
    const { page, context, complaints } = await stage.visit()
    await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await visitAt('#/protocols/dip-cycles', Promise.resolve({ page, context, complaints } as Visit))
    await pad(page, 'Share').tap()
    await pad(page, 'Copy the text').tap()
    await page.getByText('Copied.').waitFor()
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(dip)

    await page.evaluate((text) => navigator.clipboard.writeText(text), theirs.replaceAll('\n', '\r\n'))
    await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await openPaste(page)
    await pad(page, 'Paste from the clipboard').tap()
    await heading(page, 'Their dips')
    await page.getByText('From pasted text. It can be run, and is not kept yet.').waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })

  it('where it is refused leaves the text in reach, both ways', async () => {
    const { page, context } = await stage.visit()
    // What is left out of the list is refused.
    await context.grantPermissions(['notifications'])
    await page.goto(`${stage.host.address}?rehearse=60#/protocols/dip-cycles`)
    await pad(page, 'Share').tap()
    await pad(page, 'Copy the text').tap()
    await page.getByText(/Not copied: the browser refused it/).waitFor()
    const byHand = page.getByLabel('The text of Dip cycles')
    expect(await byHand.inputValue()).toBe(dip)
    await expect.poll(() => byHand.evaluate((area) => area === document.activeElement)).toBe(true)
    expect(await page.evaluate(() => getSelection()?.toString())).toContain('title: Dip cycles')

    await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await openPaste(page)
    await pad(page, 'Paste from the clipboard').tap()
    await page.getByText(/did not let this page read the clipboard/).waitFor()
    await page.getByLabel('Or paste its text here').fill(theirs)
    await pad(page, 'Read this text').tap()
    await heading(page, 'Their dips')
    await context.close()
  })
})

describe('the share sheet', () => {
  it('is given the protocol as a text file where the device has one', async () => {
    const { page, context } = await stage.visit()
    await context.addInitScript(() => {
      const given: ShareData[] = []
      const share = async (data?: ShareData): Promise<void> => void given.push(data ?? {})
      Object.assign(navigator, { share, canShare: (data?: ShareData) => (data?.files?.length ?? 0) > 0 })
      Object.assign(globalThis, { given })
    })
    await page.goto(`${stage.host.address}?rehearse=60#/protocols/dip-cycles`)
    await pad(page, 'Share').tap()
    await page.getByRole('dialog').getByRole('button', { name: 'Share', exact: true }).tap()
    await page.getByText('Shared.').waitFor()
    const shared = await page.evaluate(async () => {
      const [data] = (globalThis as unknown as { given: ShareData[] }).given
      const [file] = data?.files ?? []
      return { title: data?.title, name: file?.name, type: file?.type, text: await file?.text() }
    })
    expect(shared).toEqual({ title: 'Dip cycles', name: 'Dip cycles.txt', type: 'text/plain', text: dip })
    await context.close()
  })

  it('has no pad where the device has none', async () => {
    const { page, context } = await stage.visit()
    await context.addInitScript(() => {
      Object.defineProperty(navigator, 'share', { value: undefined })
    })
    await page.goto(`${stage.host.address}?rehearse=60#/protocols/dip-cycles`)
    await pad(page, 'Share').tap()
    await page.getByRole('dialog').getByText('Copy the text').waitFor()
    expect(await page.getByRole('dialog').getByRole('button', { name: 'Share', exact: true }).count()).toBe(0)
    await context.close()
  })
})

describe('a file that comes by itself', () => {
  it('dropped on the list of protocols is shown at once', async () => {
    const { page, context, complaints } = await visitAt('#/protocols')
    await page.waitForFunction(() => 'strandlineRehearsal' in globalThis)
    await heading(page, 'Protocols')
    await expect
      .poll(async () => {
        await drop(page, [{ name: 'theirs.yaml', text: theirs }])
        return routeOf(page)
      })
      .toMatch(/^#\/protocols\/came\//)
    await heading(page, 'Their dips')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('opened with the app, or dropped on it, leaves a live pot and its Stove as they are', async () => {
    const { page, context, complaints } = await stage.visit()
    await context.addInitScript(fileManager)
    // Slow enough that nothing falls due by the clock meanwhile.
    await page.goto(`${stage.host.address}?rehearse=10`)
    await startPot(page, { title: 'Level immersion', colourway: 'Plum', massG: 100 })
    await page.locator('.call').waitFor()
    const before = (await storedIn(page, REHEARSAL)).entries.length

    // While it calls, the whole screen is its own; what came is told when the call is answered.
    await launch(page, { name: 'theirs.yaml', text: theirs })
    await page.waitForFunction(
      () => (globalThis as unknown as Handle).strandlineRehearsal.kitchen.arrived.value.length > 0
    )
    expect(await page.getByText('theirs.yaml lies among the drafts.').count()).toBe(0)
    expect((await storedIn(page, REHEARSAL)).entries.slice(before).filter(isNoCall)).toEqual([])
    await pressUntilGone(page.locator('.call').getByRole('button', { name: /in soak/ }), page.locator('.call'))
    const answered = (await storedIn(page, REHEARSAL)).entries.length
    await page.getByText('theirs.yaml lies among the drafts.').waitFor()
    await drop(page, [{ name: 'deep.yaml', text: tooDeep }])
    await page.getByText('deep.yaml lies among the drafts, with problems to mend.').waitFor()
    expect(['', '#/stove']).toContain(await routeOf(page))
    expect(await page.locator('.stove').count()).toBe(1)
    expect((await storedIn(page, REHEARSAL)).entries.slice(answered).filter(isNoCall)).toEqual([])

    await pressUntilGone(pad(page, 'Not now: deep.yaml'), page.getByText('deep.yaml lies among the drafts'))
    await pressUntilThere(pad(page, 'Look at theirs.yaml'), page.getByRole('heading', { name: 'Their dips', level: 1 }))
    const [pot] = await page.evaluate(() =>
      (globalThis as unknown as Handle).strandlineRehearsal.kitchen.pots.value.map(({ state }) => state.status)
    )
    expect(pot).toBe('running')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('is read by the same rules whatever way it came', async () => {
    const { page, context } = await stage.visit()
    await context.addInitScript(fileManager)
    await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    const big = { name: 'big.yaml', text: 'x'.repeat(300_000) }
    const told = page.getByText('big.yaml has 293 kB. A protocol has at most 256 kB.')
    await launch(page, big)
    await told.waitFor()
    await pad(page, 'Not now: big.yaml').tap()
    await told.waitFor({ state: 'detached' })
    await drop(page, [big])
    await told.waitFor()

    const problem = page.getByText(/within 24 levels/)
    await launch(page, { name: 'deep.yaml', text: tooDeep })
    await problem.waitFor()
    expect(await page.getByLabel('The text of the protocol').inputValue()).toBe(tooDeep)
    await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await openPaste(page)
    await page.getByLabel(/paste its text here/i).fill(tooDeep)
    await pad(page, 'Read this text').tap()
    await page.getByText('From pasted text, not kept yet.').waitFor()
    await problem.waitFor()
    await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await openPaste(page)
    await page.getByLabel(/paste its text here/i).fill(big.text)
    await pad(page, 'Read this text').tap()
    await page.getByText('pasted text has 293 kB. A protocol has at most 256 kB.').waitFor()
    await context.close()
  })

  it('is what the manifest says the app opens, without leaving an open page', async () => {
    const { page, context } = await visitAt('')
    const session = await context.newCDPSession(page)
    const { data, errors } = (await session.send('Page.getAppManifest')) as { data?: string; errors: unknown[] }
    expect(errors).toEqual([])
    expect(JSON.parse(data ?? '{}')).toMatchObject({
      launch_handler: { client_mode: 'focus-existing' },
      file_handlers: [{ accept: { 'application/yaml': ['.yaml', '.yml'] }, launch_type: 'single-client' }]
    })
    await context.close()
  })
})

describe('a batch', () => {
  it('shows the very text it ran, with title and version, to copy and to save', async () => {
    const { page, context, complaints } = await visitAt('#/protocols')
    await choose(page, 'theirs.yaml', theirs)
    await pad(page, 'Keep it').tap()
    await pad(page, 'Start a pot').waitFor()
    await startPot(page, { title: 'Their dips', colourway: 'Moss', massG: 100 })
    await page.evaluate(() => (location.hash = '#/protocols'))
    await choose(page, 'newer.yaml', newer)
    await pad(page, 'Keep it as version 2 of Their dips').tap()
    await page.getByText('Earlier versions (1)').waitFor()

    await page.evaluate(() => (location.hash = '#/dye-book'))
    await page.getByText('Moss', { exact: true }).first().tap()
    await page.getByText('The protocol it ran by, as it was').tap()
    await page.getByText(/^Their dips, version \S+$/).waitFor()
    expect(await page.locator('.book-text').textContent()).toBe(theirs)
    expect(await savedBy(page, pad(page, 'Save as a file'))).toEqual({ name: 'Their dips.yaml', text: theirs })
    expect(complaints).toEqual([])
    await context.close()
  })
})
