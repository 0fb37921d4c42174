// Invented pots in the states a Stove must be able to show, at the fixtures' noon.
import type { PotCommand } from '../../../src/core/pot/commands.ts'
import type { Gap } from '../../../src/core/protocol/model.ts'
import { brew, noon } from './fixtures.ts'
import {
  acid,
  alongside,
  bands,
  choice,
  cool,
  heatOff,
  hold,
  hour,
  minute,
  programme,
  ramp,
  step,
  untilClear,
  wait
} from './programmes.ts'

type Journal = ReturnType<typeof brew>
/** How long after the start, and what. */
type Told = [afterMs: number, command: PotCommand]

const hanging = [acid('A1', 1, 3), hold('stay', 20 * minute), untilClear(3), heatOff(), cool(40)]

/** Holds at heat, 7:18 to go to the question. */
export const moss = (): Journal =>
  made('Moss', '#2f7a63', 'Level, wool', [...hanging], noon - 12 * minute - 42_000, [
    [0, { type: 'ChangeHeat', on: true, level: null }],
    [0, { type: 'MarkDone', path: 'A1' }],
    [10 * minute, { type: 'ReadTemperature', tempC: 86 }]
  ])

/** Holds at heat, and after 7:18 the heat goes off. */
export const heatOffSoon = (): Journal =>
  made(
    'Moss',
    '#2f7a63',
    'Level, wool',
    [acid('A1', 1, 3), hold('stay', 20 * minute), heatOff()],
    noon - 12 * minute - 42_000,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      [0, { type: 'MarkDone', path: 'A1' }]
    ]
  )

/** Between bands: 0:24 to the fifth, one minute each. */
export const plum = (more: Told[] = []): Journal =>
  made(
    'Plum',
    '#9a3b5a',
    'Dip gradient',
    [bands(8, minute), acid('A1', 1, 3), hold('stay', 30 * minute), heatOff(), cool(40)],
    noon - 4 * minute - 36_000,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      ...[1, 2, 3, 4].map((band): Told => [(band - 1) * 80_000, { type: 'MarkDone', path: `dip[${band}]/lower` }]),
      [3 * minute + 50_000, { type: 'ReadTemperature', tempC: 84 }],
      ...more
    ].sort((a, b) => (a[0] as number) - (b[0] as number)) as Told[]
  )

/** On the way up, last reading long ago. */
export const ochre = (): Journal =>
  made(
    'Ochre',
    '#d9931f',
    'Level, wool',
    [ramp(80, 40 * minute), bands(8, 6 * minute), heatOff(), cool(40)],
    noon - 30 * minute,
    [[24 * minute, { type: 'ReadTemperature', tempC: 61 }]]
  )

/** Acid is late: the second portion was called 32 s past its time. */
export const mossLate = (): Journal =>
  made(
    'Moss',
    '#2f7a63',
    'Level, wool',
    [acid('A1', 1, 3), hold('stay', 10 * minute), acid('A2', 2, 3), hold('on', 20 * minute), heatOff(), cool(40)],
    noon - 11 * minute - 12_000,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      [0, { type: 'MarkDone', path: 'A1' }],
      [9 * minute, { type: 'ReadTemperature', tempC: 87 }]
    ]
  )

/** The loop asks: is the bath clear. */
export const slateAsks = (): Journal =>
  made(
    'Slate',
    '#4f6a86',
    'Level, wool',
    [hold('stay', 10 * minute), untilClear(3), heatOff(), cool(40)],
    noon - 10 * minute - 5_000,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      [9 * minute, { type: 'ReadTemperature', tempC: 88 }]
    ]
  )

/** Two branches at once: the yarn soaks while the bath heats. */
export const rustForks = (): Journal =>
  made(
    'Rust',
    '#a4532a',
    'Level, wool',
    [
      alongside('both', {
        yarn: [
          step('soak', 'soak', {
            path: 'both/yarn/soak',
            behaviour: 'wait',
            call: 'Soak',
            doing: 'Soaking',
            knot: 'Soaked',
            shape: 'wave',
            bench: true,
            wait: wait(30 * minute),
            clock: { leastMs: 30 * minute, likelyMs: 30 * minute, mostMs: 30 * minute }
          }),
          step('squeeze', 'squeeze', {
            path: 'both/yarn/squeeze',
            call: 'Squeeze the skein',
            doing: 'Squeeze',
            done: 'squeezed',
            knot: 'Squeeze',
            hands: { leastMs: 0, likelyMs: minute, mostMs: minute }
          })
        ],
        bath: [{ ...ramp(80, 40 * minute), path: 'both/bath/ramp' }]
      }),
      step('enter', 'enter', {
        call: 'Enter the skein',
        doing: 'Enter',
        done: 'skein is in',
        knot: 'Enter',
        shape: 'band',
        yarn: 'in',
        hands: { leastMs: 0, likelyMs: minute, mostMs: minute }
      }),
      hold('stay', 30 * minute),
      heatOff(),
      cool(40)
    ],
    noon - 20 * minute,
    [[12 * minute, { type: 'ReadTemperature', tempC: 61 }]]
  )

/** Overnight on the bench. */
export const fernCools = (): Journal =>
  made('Fern', '#5c8a3a', 'Level, wool', [heatOff(), cool(40)], noon - 16 * minute, [
    [0, { type: 'MarkDone', path: 'off' }],
    [minute, { type: 'ReadTemperature', tempC: 92 }]
  ])

export const heather = (): Journal =>
  made(
    'Heather mist on grey',
    '#b9a6c9',
    'Level, wool',
    [hold('stay', 95 * minute), acid('A1', 1, 3), hold('long', 5 * hour), heatOff(), cool(40)],
    noon - 3 * minute,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      [minute, { type: 'ReadTemperature', tempC: 86 }]
    ]
  )

/** Stopped, still dyeing. */
export const plumStopped = (): Journal => plum([[4 * minute + 26_000, { type: 'Hold', reason: 'door' }]])

export const plumTrouble = (): Journal => plum([[4 * minute + 26_000, { type: 'CallTrouble', kind: 'boil-over' }]])

/** The lift is done, acid wanted, the skein hangs over the pot. */
export const plumLifted = (): Journal =>
  made(
    'Plum',
    '#9a3b5a',
    'Dip gradient',
    [
      step('lift', 'lift', {
        call: 'Lift. Rest it on the rod over the pot',
        doing: 'Lift',
        done: 'lifted',
        knot: 'Lift',
        shape: 'band',
        yarn: 'lifted',
        outOfBathMostMs: 3 * minute,
        hands: { leastMs: 0, likelyMs: 30_000, mostMs: 30_000 }
      }),
      acid('A2', 2, 3),
      step('stir', 'turn', { call: 'Stir', doing: 'Stir', done: 'stirred', knot: 'Stir', soft: true }),
      step('enter', 'enter', {
        call: 'Enter the skein',
        doing: 'Enter',
        done: 'skein is in',
        knot: 'Enter',
        shape: 'band',
        yarn: 'in'
      }),
      hold('stay', 20 * minute),
      heatOff(),
      cool(40)
    ],
    noon - 2 * minute,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      [0, { type: 'PutSkeinsIn', tags: [] }],
      [minute, { type: 'ReadTemperature', tempC: 86 }],
      [minute + 12_000, { type: 'MarkDone', path: 'lift' }]
    ]
  )

export const slateChooses = (): Journal =>
  made(
    'Slate',
    '#4f6a86',
    'Level, wool',
    [
      choice('which', 'Is the skein level', { Level: [hold('a', 10 * minute, { path: 'which/Level/a' })], Patchy: [] }),
      heatOff()
    ],
    noon - 20_000,
    []
  )

/** Out to air, two minutes at most, with nothing to do meanwhile. */
export const slateAirs = (): Journal =>
  made(
    'Slate',
    '#4f6a86',
    'Indigo, one dip',
    [
      step('lift', 'lift', {
        call: 'Lift',
        doing: 'Lift',
        done: 'lifted',
        knot: 'Lift',
        yarn: 'out',
        outOfBathMostMs: 2 * minute
      }),
      step('air', 'air', {
        behaviour: 'wait',
        call: 'Air',
        doing: 'Airing',
        knot: 'Air',
        wait: wait(20 * minute),
        bench: true
      }),
      step('enter', 'enter', {
        call: 'Enter the skein',
        doing: 'Enter',
        done: 'skein is in',
        knot: 'Enter',
        yarn: 'in'
      })
    ],
    noon - 3 * minute,
    [
      [0, { type: 'PutSkeinsIn', tags: [] }],
      [80_000, { type: 'MarkDone', path: 'lift' }]
    ]
  )

/** Acid 2 must follow acid 1 within 15 min; a hold still runs. */
export const mossHurries = (): Journal =>
  made(
    'Moss',
    '#2f7a63',
    'Level, wool',
    [acid('A1', 1, 3), hold('stay', 20 * minute), acid('A2', 2, 3), heatOff()],
    noon - 13 * minute,
    [[0, { type: 'MarkDone', path: 'A1' }]],
    [{ from: 'A1', to: 'A2', atLeastMs: null, atMostMs: 15 * minute, late: 'off-protocol' }]
  )

/** Steam: the water is looked at every 15 min. */
export const ochreSteams = (): Journal =>
  made(
    'Ochre',
    '#d9931f',
    'Steam',
    [hold('steam', 40 * minute, { doing: 'Steaming', lookEveryMs: 15 * minute }), heatOff()],
    noon - 15 * minute - 20_000,
    [[0, { type: 'ChangeHeat', on: true, level: null }]]
  )

/** One minute before the question, after a quiet time. */
export const mossSoon = (): Journal =>
  made(
    'Moss',
    '#2f7a63',
    'Level, wool',
    [hold('stay', 20 * minute), acid('A2', 2, 3), heatOff()],
    noon - 19 * minute - 30_000,
    [[0, { type: 'ChangeHeat', on: true, level: null }]]
  )

export const done = (): Journal =>
  made(
    'Fern',
    '#5c8a3a',
    'Level, wool',
    [step('last', 'do', { call: 'Lift the skein out', done: 'out', knot: 'Out' })],
    noon - minute,
    [
      [0, { type: 'ChangeHeat', on: true, level: null }],
      [20_000, { type: 'MarkDone', path: 'last' }]
    ]
  )

function made(
  colourway: string,
  colour: string,
  title: string,
  steps: Parameters<typeof programme>[1],
  startedAtMs: number,
  told: Told[],
  gaps: Gap[] = []
): Journal {
  return brew(
    {
      colourway,
      colour,
      programme: { ...programme(title, steps), gaps },
      startedAtMs,
      told: told.map(([afterMs, command]) => ({ atMs: startedAtMs + afterMs, command }))
    },
    noon
  )
}

/** By name, for the page of pictures. */
export const pots = {
  moss,
  plum,
  ochre,
  mossLate,
  slateAsks,
  rustForks,
  fernCools,
  heather,
  plumStopped,
  plumTrouble,
  plumLifted,
  slateChooses,
  slateAirs,
  mossHurries,
  ochreSteams,
  mossSoon,
  done
} as const
