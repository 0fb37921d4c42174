// A technique of one's own, by forms alone on a phone: written, rehearsed, run, changed after the batch, and compared.
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answerAll } from './stage/answers.ts'
import { startPot } from './stage/dyer.ts'
import { runFast } from './stage/fast-clock.ts'
import { addStep, fill, form, openRow, pad, removeRow } from './stage/forms.ts'
import { REHEARSAL, storedIn, summariesIn } from './stage/journal.ts'
import { pressUntilGone } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const TITLE = 'Ice-water resist'
const written = `strandline: 1
title: Ice-water resist
materials:
  acid: {kind: acid, strength: 5 %, amount: 4 % owf}
steps:
  - soak: 40 min
  - do: Tie three resists
  - fill: {liquor: 2 L, at: 15 °C}
  - add: half of acid
  - enter
  - for each:
      colour: [red, yellow, blue]
      steps:
        - do: Pour {colour} along a line
        - until:
            ask: {question: Is the patch clear?, answers: [Clear, Not yet]}
            at most: 6
            likely: 3
            steps:
              - wait: 1 min
  - alongside:
      bath:
        - heat: {to: 85 °C, rate: 2 °C/min}
      hands:
        - repeat:
            times: 7
            steps:
              - turn
              - wait: 5 min
  - hold: {for: 10 min, at: 85 °C, forbid: stir}
  - hold: {for: 15..20 min, at: 85 °C}
  - until:
      ask: {grade: bath, enough: clear}
      at most: 2
      likely: 1
      steps:
        - check: {reached: 85 °C}
        - check: {ph: 4..5}
        - add: 2 % owf of acid
        - hold: 10 min
      otherwise:
        - note: {record: residue}
  - heat: off
  - cool: [40 °C, at least 1 h]
  - do: Release the resists
  - until:
      ask: {grade: rinse, enough: clear}
      at most: 5
      likely: 3
      steps:
        - rinse
`.split('\n')

async function addMaterial(page: Page, name: string, kind: string, fields: Record<string, string>): Promise<void> {
  await pad(page, 'Add a material').tap()
  await form(page).getByLabel('Name').fill(name)
  await pad(page, kind).first().tap()
  await fill(page, fields)
}

async function header(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
  await pad(page, 'Write a protocol').tap()
  await page.getByRole('heading', { level: 1, name: 'New protocol' }).waitFor()
  await openRow(page, 'title')
  await page.getByLabel('Title').fill(TITLE)
  await addMaterial(page, 'acid', 'acid', { Strength: '5 %', Amount: '4 % owf' })
  await removeRow(page, 'Rinse')
}

async function coldPart(page: Page): Promise<void> {
  await addStep(page, 'soak', { For: '40 min' })
  await addStep(page, 'do', { Say: 'Tie three resists' })
  await addStep(page, 'fill', { Liquor: '2 L', At: '15 °C' })
  await addStep(page, 'add', { Amount: 'half of acid' })
  await addStep(page, 'enter')
}

/** For each colour: pour, and look once a minute, six times at most. */
async function pours(page: Page): Promise<void> {
  await addStep(page, 'for each')
  await pad(page, 'Colour: name them').tap()
  await fill(page, { 'Colour 1': 'red' })
  for (const [nth, colour] of ['yellow', 'blue'].entries()) {
    await pad(page, 'Colour: add one').tap()
    await fill(page, { [`Colour ${nth + 2}`]: colour })
  }
  await pad(page, 'Take away Band').tap()
  await openRow(page, 'Stir the bath')
  await fill(page, { Say: 'Pour {colour} along a line' })
  await addStep(page, 'until', { Question: 'Is the patch clear?' }, 'Add a step after')
  await pad(page, 'Answers: add one').tap()
  await fill(page, { 'Answers 1': 'Clear' })
  await pad(page, 'Answers: add one').tap()
  await fill(page, { 'Answers 2': 'Not yet', Grade: '', 'At most': '6', Likely: '3' })
  await form(page).getByRole('group', { name: 'Enough' }).getByRole('button', { name: 'Not said' }).tap()
  await addStep(page, 'wait', { 'Until 1': '1 min' }, 'Add a step inside')
  await removeRow(page, 'Stir the bath')
}

/** The rise with its turns, the hold in two parts, and acid where it is not clear. */
async function heat(page: Page): Promise<void> {
  await addStep(page, 'alongside')
  await openRow(page, 'Stir the bath')
  await addStep(page, 'heat', { To: '85 °C', Rate: '2 °C/min' }, 'Add a step after')
  await removeRow(page, 'Stir the bath')
  await openRow(page, /^Meanwhile first/)
  await fill(page, { Name: 'bath' })
  await form(page).getByLabel('Name').press('Enter')
  await openRow(page, /^Alongside/)
  await pad(page, 'Add a branch').tap()
  await fill(page, { Name: 'hands' })
  await addStep(page, 'repeat', { Times: '7' }, 'Add a step inside')
  await openRow(page, 'Stir the bath')
  await addStep(page, 'turn', {}, 'Add a step after')
  await addStep(page, 'wait', { 'Until 1': '5 min' }, 'Add a step after')
  await removeRow(page, 'Stir the bath')
  await addStep(page, 'hold', { For: '10 min', At: '85 °C' })
  await form(page).locator('summary').tap()
  await pad(page, 'Forbid: add one').tap()
  await fill(page, { 'Forbid 1': 'stir' })
  await addStep(page, 'hold', { For: '15..20 min', At: '85 °C' })
}

async function untilClear(page: Page): Promise<void> {
  await addStep(page, 'until', { Grade: 'bath', 'At most': '2', Likely: '1' })
  await form(page).getByRole('group', { name: 'Enough' }).getByRole('button', { name: 'clear', exact: true }).tap()
  await addStep(page, 'check', { Reached: '85 °C', Question: '' }, 'Add a step inside')
  await addStep(page, 'check', { pH: '4..5', Question: '' }, 'Add a step after')
  await addStep(page, 'add', { Amount: '2 % owf of acid' }, 'Add a step after')
  await addStep(page, 'hold', { For: '10 min' }, 'Add a step after')
  await removeRow(page, 'Stir the bath')
  await openRow(page, /^Until/, 1)
  await addStep(page, 'note', {}, 'Add what is done otherwise')
  await form(page).locator('summary').tap()
  await pad(page, 'residue').tap()
}

async function end(page: Page): Promise<void> {
  await addStep(page, 'heat', { To: 'off' })
  await addStep(page, 'cool', { 'Until 1': '40 °C' })
  await pad(page, 'Until: add one').tap()
  await fill(page, { 'Until 2': 'at least 1 h' })
  await addStep(page, 'do', { Say: 'Release the resists' })
  await addStep(page, 'until', { Grade: 'rinse', 'At most': '5', Likely: '3' })
  await form(page).getByRole('group', { name: 'Enough' }).getByRole('button', { name: 'clear', exact: true }).tap()
  await addStep(page, 'rinse', {}, 'Add a step inside')
  await removeRow(page, 'Stir the bath')
}

async function rehearse(page: Page): Promise<void> {
  await pad(page, 'Rehearse').tap()
  await page.locator('.rehearse-bar').waitFor()
  await pad(page, 'Pace').tap()
  await pad(page, '600×').tap()
  await pad(page, 'Somebody prompt').tap()
  await pressUntilGone(pad(page, 'Back'), page.getByRole('dialog'))
  await page.getByRole('heading', { level: 1, name: 'The rehearsal is over' }).waitFor({ timeout: 90_000 })
  // 40 min of soaking, 35 of the rise at 2 °C/min, 10 and 15 of holding, and from 85 to 40 °C in a room of 20 by Newton's
  // law with k = 0.0112 a minute: ln(65/20)/0.0112 = 105. In all 205 min.
  await page.getByText(/^took\s3\sh\s2[4-7]\smin/).waitFor()
}

/** The patches are clear at the second look, the bath takes acid once more, the rinse is clear at the second. */
async function run(page: Page): Promise<void> {
  await startPot(page, { title: TITLE, colourway: 'Floe', massG: 80 })
  await runFast(page)
  const complete = async (): Promise<boolean> =>
    (await summariesIn(page, REHEARSAL)).some(({ status }) => status === 'complete')
  await answerAll(page, (_pot, _act, times) => (times === 0 ? 'tint' : 'clear'), complete)
  const { entries } = await storedIn(page, REHEARSAL)
  const doses = entries.flatMap(({ event }) => (event.type === 'Dosed' ? [event.added.value] : []))
  // 4 % of 80 g as 5 % acid is 64 mL, half of it at first; 2 % more is 32 mL.
  expect(doses.map((mL) => Number(mL.toFixed(6)))).toEqual([2_000, 32, 32])
}

/** After the batch: half an hour more in the soak, and the two versions side by side. */
async function changeAndCompare(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
  await page.getByRole('button', { name: new RegExp(`^${TITLE}`) }).tap()
  await pad(page, 'Change a copy').tap()
  await openRow(page, /^Soak/)
  await fill(page, { For: '70 min' })
  await pad(page, 'Save').tap()
  await page.getByText('Earlier versions (1)').tap()
  await page.getByText(/^Was .*40 min/).waitFor()
  await page.getByText(/^Now .*70 min/).waitFor()
  // The batch keeps the text it ran.
  const { entries } = await storedIn(page, REHEARSAL)
  const ran = entries.flatMap(({ event }) => (event.type === 'PotStarted' ? [event.protocol.text] : []))
  expect(ran).toEqual([`${written.join('\n')}`])
}

describe('the ice-water resist', () => {
  it('is written by forms on a phone, rehearsed, run, changed after the batch, and its versions compared', {
    timeout: 300_000
  }, async () => {
    const { page, context, complaints } = await stage.visit({ viewport: { width: 390, height: 844 } })
    page.setDefaultTimeout(15_000)
    await header(page)
    await coldPart(page)
    await pours(page)
    await heat(page)
    await untilClear(page)
    await end(page)
    await pad(page, 'Text').tap()
    await page.getByText('No problems.').waitFor()
    expect((await page.getByLabel('The text of the protocol').inputValue()).split('\n')).toEqual(written)

    await rehearse(page)
    await pad(page, 'Back to the draft').tap()
    await pad(page, 'Save').tap()
    // The workshop has the title for its heading too: only the protocol's own page starts a pot.
    await pad(page, 'Start a pot').waitFor()
    expect(await page.getByText('Earlier versions').count()).toBe(0)

    await run(page)
    await changeAndCompare(page)
    expect(complaints).toEqual([])
    await context.close()
  })
})
