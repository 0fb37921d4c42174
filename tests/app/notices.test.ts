import { describe, expect, it } from 'vitest'
import { commands } from '../../src/app/commands.ts'
import { answerPress, noticeSay } from '../../src/app/notices.ts'
import { metricUnits } from '../../src/core/quantity/units.ts'
import type { NoticePress } from '../../src/shell/notices/presses.ts'
import { PERSON } from '../core/pot/given.ts'
import { act, dose, gradeOf, programme, ask as question, wait } from '../core/pot/programmes.ts'
import { events, MIN, open, pass, send, startCommand, stored, type Table, table } from '../session/kitchen-table.ts'

const run = programme([
  wait('soak', 10 * MIN),
  dose('acid1', 30, 'vinegar', { knot: 'Acid 1', call: 'Acid 1 in', detail: 'along the wall' }),
  wait('hold', 5 * MIN),
  question('look', gradeOf('bath'), { call: 'Look at the bath' }),
  act('weigh', { records: ['dry mass'] })
])

/** Two pots that both call for acid 1, and the press of a notice of one of them. */
async function calling(minutes = 11) {
  const at = table()
  await at.session.open()
  for (const [potId, name] of [
    ['plum', 'Plum'],
    ['moss', 'Moss']
  ] as const)
    await at.session.send(potId, startCommand(potId, name, run), { by: PERSON })
  await pass(at, minutes * MIN)
  return at
}

function alertOf(at: Table, potId: string) {
  const alert = at.session.pots().find((pot) => pot.potId === potId)?.alerts[0]
  if (alert === undefined) throw new Error(`${potId} does not call`)
  return { potId, colourway: potId === 'plum' ? 'Plum' : 'Moss', alert }
}

function pressOf(at: Table, potId: string, change: Partial<NoticePress> = {}): NoticePress {
  const { key, path } = alertOf(at, potId).alert
  const made = { type: 'notice-pressed' as const, pressId: `press ${key} ${potId}`, action: 'done' as const }
  return { ...made, of: 's', potId, key, path, untilMs: 1_000, ...change }
}

let ids = 0
function answer(at: Table, press: NoticePress, change: Partial<Parameters<typeof answerPress>[0]> = {}) {
  const owner = { owns: () => true, settled: Promise.resolve(), take: async () => {}, onChange: () => () => {} }
  const silent = { say() {}, ask: async () => null, onWord: () => () => {}, close() {} }
  const sends = commands(at.session, owner, silent, () => `id ${++ids}`)
  const parts = {
    name: 's',
    owns: owner.owns,
    pots: at.session.pots,
    nowMs: at.clock.nowMs,
    commands: sends,
    dyer: () => 'A'
  }
  return answerPress({ ...parts, wallMs: () => 0, ...change }, press)
}

const said = (at: Table, potId: string) =>
  noticeSay(alertOf(at, potId), at.session.pots(), metricUnits, at.clock.nowMs())

describe('what a notice says', () => {
  it('the pot and the act above; the amount, the cup and what the step warns of below; and its two buttons', async () => {
    const { title, body, actions } = said(await calling(10), 'plum')
    expect(title).toBe('Plum: Acid 1')
    expect(body.split('\n').slice(0, 3)).toEqual([
      'Acid 1 in',
      '30\u00a0mL of vinegar, cup “Plum, acid1”',
      'along the wall'
    ])
    expect(actions.map((one) => `${one.action}: ${one.title}`)).toEqual(['done: Done', 'later: Not yet, 2 min'])
  })

  it('says that it is late', async () => {
    expect(said(await calling(12), 'plum').body).toMatch(/^Late\. Acid 1 in/)
  })

  it('has "Done" also in the moment before the call is stored', async () => {
    const at = await calling(9)
    at.clock.advance(MIN)
    at.session.wake()
    const one = at.alerts.find(({ potId }) => potId === 'plum')
    expect(one?.alert.path).toBe('acid1')
    expect(open(at)).toEqual(['soak'])
    if (one) expect(noticeSay(one, at.session.pots(), metricUnits, at.clock.nowMs()).actions[0]?.action).toBe('done')
  })

  it('has no "Done" while the pot is stopped: no step closes then', async () => {
    const at = await calling()
    await send(at, { type: 'CallTrouble', kind: 'boil-over' })
    expect(said(at, 'plum').actions.map(({ action }) => action)).not.toContain('done')
  })

  it('has no "Done" where an answer or a record is wanted first, or where the alert is no call', async () => {
    const at = await calling()
    await send(at, { type: 'MarkDone', path: 'acid1' })
    await pass(at, 6 * MIN)
    expect(said(at, 'plum')).toMatchObject({ title: 'Plum: look', actions: [{ action: 'open' }, { action: 'later' }] })
    await send(at, { type: 'AnswerStep', path: 'look', answer: { kind: 'grade', grade: 'clear', hue: null } })
    expect(said(at, 'plum').actions.map(({ action }) => action)).toEqual(['open', 'later'])
    await send(at, { type: 'Skip', path: 'weigh', reason: 'test' })
    await pass(at, 1_000)
    expect(said(at, 'plum')).toMatchObject({ title: 'Plum: all steps done', actions: [{ action: 'open' }] })
  })
})

describe('a press of a notice', () => {
  it('"Done" closes the step of its own pot, with the dose as planned, and says that it came by a notice', async () => {
    const at = await calling()
    expect(await answer(at, pressOf(at, 'moss'))).toBe('acted')
    expect([open(at, 'moss'), open(at, 'plum')]).toEqual([['hold'], ['acid1']])
    const dosed = stored(at, 'moss').find(({ event }) => event.type === 'Dosed')
    expect(dosed?.by).toEqual({ kind: 'person', name: 'A', via: 'notice' })
    expect(dosed?.event).toMatchObject({ added: { value: 30, unit: 'mL' } })
    expect(events(at, 'StepClosed').filter(({ path }) => path === 'acid1')).toEqual([])
  })

  it.each(['done', 'later'] as const)('of "%s" acts also in the moment before the call is stored', async (action) => {
    const at = await calling(9)
    at.clock.advance(MIN)
    at.session.wake()
    const key = at.alerts.find(({ potId }) => potId === 'plum')?.alert.key ?? ''
    expect(open(at)).toEqual(['soak'])
    const told = { type: 'notice-pressed', pressId: `early ${action}`, action, of: 's', untilMs: 1_000 } as const
    expect(await answer(at, { ...told, potId: 'plum', key, path: 'acid1' })).toBe('acted')
    expect(events(at, action === 'done' ? 'StepClosed' : 'DueMoved').at(-1)).toMatchObject({ path: 'acid1' })
  })

  it('"Not yet" puts the call off by two minutes with a reason, and it comes again', async () => {
    const at = await calling()
    expect(await answer(at, pressOf(at, 'plum', { action: 'later' }))).toBe('acted')
    const pot = () => at.session.pots().find(({ potId }) => potId === 'plum')
    expect(pot()?.alerts.filter(({ kind }) => kind === 'call')).toEqual([])
    expect(events(at, 'DueMoved').at(-1)).toMatchObject({ path: 'acid1', why: 'not-yet' })
    await pass(at, 2 * MIN)
    expect(pot()?.alerts.map(({ path }) => path)).toEqual(['acid1'])
  })

  it('told twice is one act', async () => {
    const at = await calling()
    const press = pressOf(at, 'plum')
    expect(await Promise.all([answer(at, press), answer(at, press)])).toEqual(['acted', 'acted'])
    expect(events(at, 'StepClosed').filter(({ path }) => path === 'acid1')).toHaveLength(1)
  })

  it('does nothing and asks for a look when its alert no longer stands: another one must not be answered by it', async () => {
    const at = await calling()
    const press = pressOf(at, 'plum')
    await send(at, { type: 'NotYet', path: 'acid1', byMs: MIN, reason: 'test' })
    await pass(at, 2 * MIN)
    const before = stored(at).length
    expect(await answer(at, press)).toBe('look')
    expect(stored(at)).toHaveLength(before)
  })

  it('asks for a look for a question, a stopped pot, a press of long ago and one beside the buttons', async () => {
    const at = await calling()
    const before = stored(at).length
    expect(await answer(at, pressOf(at, 'plum', { action: 'open' }))).toBe('look')
    expect(await answer(at, pressOf(at, 'plum', { untilMs: 99 }), { wallMs: () => 100 })).toBe('look')
    expect(stored(at)).toHaveLength(before)
    await send(at, { type: 'CallTrouble', kind: 'boil-over' })
    expect(await answer(at, pressOf(at, 'plum'))).toBe('look')
    expect(open(at)).toEqual(['acid1'])
    const asking = await calling()
    await send(asking, { type: 'MarkDone', path: 'acid1' })
    await pass(asking, 6 * MIN)
    expect(await answer(asking, pressOf(asking, 'plum'))).toBe('look')
    expect(open(asking)).toEqual(['look'])
  })

  it('asks for a look when the act could not be stored', async () => {
    const at = await calling()
    at.faults.push('full')
    expect(await answer(at, pressOf(at, 'plum'))).toBe('look')
  })

  it('is for the page that owns these pots, and for no other', async () => {
    const at = await calling()
    const press = pressOf(at, 'plum')
    expect(await answer(at, press, { owns: () => false })).toBe('follows')
    expect(await answer(at, press, { name: 'rehearsal' })).toBe('other')
    expect(open(at)).toEqual(['acid1'])
  })
})
