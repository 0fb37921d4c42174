import { describe, expect, it } from 'vitest'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { withSteps } from './broken-files.ts'
import { inputs, minuteMs, pathsOf, programmeFrom, protocolFrom, stepOf } from './made.ts'

const acid = 'materials:\n  acid: {kind: acid, strength: 5 %, amount: 2 % owf}\n'

describe('paths', () => {
  it('name every round, branch, answer and question', () => {
    const programme = programmeFrom(
      withSteps(`
- alongside:
    yarn: [rinse]
    bath: [spin]
- for each: {id: dip, band: {from: 1, to: 2}, steps: [lower: band, hold: 6 min]}
- until:
    id: clear
    ask: {grade: bath, enough: trace}
    at most: 2
    steps: [hold: 10 min]
    otherwise: [note: left]
- choice: {id: pick, ask: More?, answers: {yes: [turn], no: []}}`)
    )
    expect(pathsOf(programme)).toEqual([
      'alongside.yarn/rinse',
      'alongside.bath/spin',
      'dip[1]/lower',
      'dip[1]/hold',
      'dip[2]/lower',
      'dip[2]/hold',
      'clear[1]/ask',
      'clear[1]/hold',
      'clear[2]/ask',
      'clear[2]/hold',
      'clear[3]/ask',
      'clear.otherwise/note',
      'pick/ask',
      'pick=yes/turn'
    ])
  })

  it('number steps of one word, and leave alone the names the writer uses', () => {
    const programme = programmeFrom(
      withSteps('- rinse\n- rinse\n- spin: {id: rinse-2}\n- rinse\n- turn: {marks: spin}\n- spin')
    )
    expect(pathsOf(programme)).toEqual(['rinse', 'rinse-3', 'rinse-2', 'rinse-4', 'turn', 'spin-2'])
  })

  it('give an addition with lifted goods four acts, and its moment to the addition', () => {
    const programme = programmeFrom(
      withSteps('- add: {id: A1, amount: 1/2 of acid, yarn: lifted, marks: acid in}', acid)
    )
    expect(pathsOf(programme)).toEqual(['A1-lift', 'A1', 'A1-stir', 'A1-enter'])
    expect(stepOf(programme, 'A1')).toMatchObject({ yarn: 'lifted', marks: ['acid in'], behaviour: 'dose' })
    expect(stepOf(programme, 'A1-lift')).toMatchObject({ yarn: 'out', outOfBathMostMs: 3 * minuteMs, marks: [] })
    expect(stepOf(programme, 'A1-enter').yarn).toBe('in')
  })
})

describe('waits', () => {
  const waitOf = (text: string) => stepOf(programmeFrom(withSteps(`- enter: {marks: all in}\n- ${text}`)), 'w').wait

  it('keep the grace of a range, none for one time, and no end for at least', () => {
    expect(waitOf('hold: {id: w, for: 25..30 min}')).toMatchObject({ forMs: 25 * minuteMs, graceMs: 5 * minuteMs })
    expect(waitOf('hold: {id: w, for: 6 min}')).toMatchObject({ forMs: 6 * minuteMs, graceMs: 0, leastMs: 0 })
    expect(waitOf('hold: {id: w, for: at least 30 min}')).toMatchObject({ forMs: 30 * minuteMs, graceMs: null })
    expect(waitOf('hold: {id: w, for: 10 min, at least: 4 min}')?.leastMs).toBe(4 * minuteMs)
  })

  it('count from a moment, and combine with temperatures, people and judgements', () => {
    expect(waitOf('wait: {id: w, until: 10 min after all in}')).toMatchObject({ forMs: 10 * minuteMs, from: 'all in' })
    expect(waitOf('cool: {id: w, until: at least 30 min and until 40 °C}')).toEqual({
      forMs: 30 * minuteMs,
      graceMs: null,
      leastMs: 0,
      from: null,
      until: [{ kind: 'temperature', lowC: null, highC: 40, going: 'down' }]
    })
    expect(waitOf('wait: {id: w, until: full steam}')?.until).toEqual([{ kind: 'person', ask: 'full steam' }])
    expect(waitOf('wait: {id: w, until: [all in, {grade: bath, enough: trace}]}')?.until).toEqual([
      { kind: 'moment', name: 'all in' },
      { kind: 'judgement', question: { kind: 'grade', of: 'bath', enough: 'trace' } }
    ])
    expect(waitOf('wait: {id: w, until: 104 °F}')?.until).toMatchObject([{ kind: 'temperature', going: 'up' }])
  })
})

describe('what the dyer gives', () => {
  const text = withSteps(
    '- for each: {band: {from: 1, to: bands}, steps: [lower: band]}\n- add: "{depth} owf of acid"',
    `${acid}inputs:\n  bands: {ask: Bands?, kind: count, default: 5, least: 2, most: 12}\n  depth: {ask: Depth?, kind: percent}\n`
  )

  it('is asked for with every problem at once', () => {
    const made = programmeOf(
      protocolFrom(text),
      inputs({ skeins: [{ tag: 'A', massG: 0 }], values: { bands: '13' }, boilC: 140 })
    )
    expect(made.ok ? [] : made.problems.map((p) => [p.field, p.code])).toEqual([
      ['skeins.A', 'mass-outside'],
      ['boilC', 'boil-outside'],
      ['bands', 'value-outside'],
      ['depth', 'value-missing']
    ])
  })

  it('may be typed or canonical, and shows in the programme', () => {
    const typed = programmeFrom(text, { values: { bands: '3', depth: '1.5 %' } })
    const canonical = programmeFrom(text, { values: { bands: 3, depth: 1.5 } })
    expect({ ...typed, given: null }).toEqual({ ...canonical, given: null })
    expect(typed.inputs.map((input) => input.shown.replace(/\s/g, ' '))).toEqual(['3', '1.5 %'])
    expect(stepOf(typed, 'each[2]/lower').depth).toEqual({ fraction: 2 / 3, label: 'band 2 of 3' })
    expect(stepOf(typed, 'each[2]/lower')).toMatchObject({ call: 'Lower band 2', knot: 'Band 2' })
  })

  it('is refused where the bottle is of unknown strength and its strength is needed', () => {
    const protocol = protocolFrom(withSteps('- add: 2 % owf of acid', 'materials:\n  acid: acid\n'))
    const made = programmeOf(protocol, inputs())
    expect(made.ok ? [] : made.problems.map((p) => [p.field, p.code])).toEqual([['materials.acid', 'strength-missing']])
    const bottle = { name: 'vinegar', percent: 6, basis: 'w/v', densityGPerML: null } as const
    expect(
      programmeFrom(withSteps('- add: 2 % owf of acid', 'materials:\n  acid: acid\n'), { materials: { acid: bottle } })
        .setOut[0]
    ).toMatchObject({ amount: { value: 33, unit: 'mL', of: 'vinegar' }, percent: 6, kind: 'acid' })
  })
})

describe('loops that come to more than 2,000 steps', () => {
  it('by the values given are refused at once', () => {
    const loops = (depth: number): string =>
      depth === 0 ? '[rinse]' : `[repeat: {times: n, steps: ${loops(depth - 1)}}]`
    const protocol = protocolFrom(
      `strandline: 1\ntitle: T\ninputs: {n: {ask: n?, kind: count, default: 1}}\nsteps: ${loops(6)}\n`
    )
    const before = performance.now()
    const made = programmeOf(protocol, inputs({ values: { n: 60 } }))
    expect(made.ok ? [] : made.problems.map((p) => p.code)).toEqual(['too-many-steps'])
    // 60 rounds in 60 rounds, six deep, would never end.
    expect(performance.now() - before).toBeLessThan(4000)
  })
})

describe('the boil', () => {
  const ramp = (to: string, boilC: number | null) =>
    stepOf(programmeFrom(withSteps(`- heat: {id: h, to: ${to}}\n- heat: off`), { boilC }), 'h')

  it('caps a target above it, and says so', () => {
    expect(ramp('98 °C', 95)).toMatchObject({
      ramp: { lowC: 95, highC: null },
      detail: '98 °C or the boil, whichever is lower'
    })
    expect(ramp('98 °C', null)).toMatchObject({ ramp: { lowC: 98, highC: null }, detail: null })
    expect(ramp('90..98 °C', 95).ramp).toMatchObject({ lowC: 90, highC: null })
    expect(ramp('the boil', 96.5).ramp).toMatchObject({ lowC: 96.5 })
  })
})

describe('estimates', () => {
  it('share the clock between branches and add their hands', () => {
    const { estimate } = programmeFrom(
      withSteps(
        '- alongside:\n    a: [hold: 10 min, turn: {hands: 60 s..60 s}]\n    b: [hold: 20 min, turn: {hands: 60 s..60 s}]'
      )
    )
    expect(estimate.clock).toEqual({ leastMs: 21 * minuteMs, likelyMs: 21 * minuteMs, mostMs: 21 * minuteMs })
    expect(estimate.hands.likelyMs).toBe(2 * minuteMs)
  })

  it('count no, the likely, or every round of an until, and the otherwise only in the longest', () => {
    const text = withSteps(`
- until:
    ask: {grade: bath, enough: trace}
    at most: 3
    likely: 2
    steps: [hold: 10 min]
    otherwise: [hold: 60 min]`)
    const ask = { least: 10_000, likely: 30_000, most: 90_000 }
    expect(programmeFrom(text).estimate.clock).toEqual({
      leastMs: ask.least,
      likelyMs: 3 * ask.likely + 20 * minuteMs,
      mostMs: 4 * ask.most + 30 * minuteMs + 60 * minuteMs
    })
  })

  it('take the shortest, the first and the longest answer of a choice', () => {
    const text = withSteps('- choice: {ask: Which?, answers: {b: [hold: 10 min], a: [hold: 5 min], c: [hold: 30 min]}}')
    expect(programmeFrom(text).estimate.clock).toEqual({
      leastMs: 10_000 + 5 * minuteMs,
      likelyMs: 30_000 + 10 * minuteMs,
      mostMs: 90_000 + 30 * minuteMs
    })
  })

  it('know what is left of a wait that counts from a moment', () => {
    const programme = programmeFrom(
      withSteps('- hold: {id: a, for: 4 min}\n- hold: 7 min\n- wait: {id: w, until: 10 min after a}')
    )
    expect(stepOf(programme, 'w').clock.likelyMs).toBe(3 * minuteMs)
  })
})
