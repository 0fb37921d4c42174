// When a pot will be at a temperature, or was.
import { refuse } from '../../../../core/chemistry/answer.ts'
import { type TimeToTemperature, timeToTemperature } from '../../../../core/chemistry/index.ts'
import { showDuration, showTemperature, type Units } from '../../../../core/quantity/index.ts'
import { choice, optional, rows } from '../field.ts'
import { difference, minutes, temperature } from '../quantities.ts'
import { put } from '../shown.ts'
import { type Figure, sum, type Worked } from '../sum.ts'

const step = { '0.1C': 0.1, '0.5C': 0.5, '1C': 1, '0.1F': 0.1 / 1.8, '1F': 1 / 1.8 } as const

export const timeTo = sum({
  id: 'time-to-temperature',
  title: 'Time to a temperature',
  ask: 'When will the pot be at this temperature, by its readings so far?',
  group: 'Heat',
  words: 'heating cooling cool-down forecast thermometer readings newton',
  uses: ['timeToTemperature'],
  fields: {
    towards: choice('The pot is', [
      ['up', 'heating'],
      ['down', 'cooling']
    ]),
    targetC: temperature('Wanted'),
    readings: rows(
      'Readings since the heat was last changed',
      'Reading',
      { atMin: minutes('At'), tempC: temperature('It read') },
      [{}, {}, {}],
      {
        least: 3,
        most: 60,
        hint: 'Minutes from any start, for example 0, 5 and 10.'
      }
    ),
    step: choice(
      'The thermometer shows steps of',
      [
        ['0.1C', '0.1 °C'],
        ['0.5C', '0.5 °C'],
        ['1C', '1 °C'],
        ['0.1F', '0.1 °F'],
        ['1F', '1 °F']
      ],
      { start: ({ temperature: scale }) => (scale === 'C' ? '0.1C' : '0.1F') }
    ),
    sdC: difference('A reading may be out by', {
      start: ({ temperature: scale }) => (scale === 'C' ? '0.3' : '0.5'),
      hint: 'From uneven stirring and the thermometer: mostly no more than this.'
    }),
    boilC: optional(temperature('Water boils here at', { hint: 'Left empty: at sea level.' }), undefined)
  },
  work({ towards, targetC, readings, step: shows, sdC, boilC }, units) {
    const asked = {
      towards,
      targetC,
      readings,
      sdC,
      resolutionC: step[shows],
      ...(boilC === undefined ? {} : { boilC })
    }
    const answer = timeToTemperature(asked)
    const lastMin = Math.max(...readings.map(({ atMin }) => atMin))
    const fitted = `${readings.length} readings, the last at minute ${put(lastMin)}; wanted ${put(targetC)} °C`
    return shown(answer, { targetC, lastMin, fitted, units })
  }
})

type Around = { targetC: number; lastMin: number; fitted: string; units: Units }

function shown(answer: TimeToTemperature, { targetC, lastMin, fitted, units }: Around): Worked {
  const wanted = showTemperature(targetC, units, { digits: 1 })
  switch (answer.kind) {
    case 'never':
      return {
        figures: [{ what: `At ${wanted}`, figure: 'never' }],
        say: ['Not on this heat, or not in this direction: it levels off before, or the bath boils below it.'],
        put: [fitted]
      }
    case 'reached-at': {
      const { min, lowMin, highMin } = answer
      const by =
        highMin === null
          ? `not before minute ${whole(lowMin)}, if at all`
          : `minute ${whole(lowMin)} to ${whole(highMin)}`
      return {
        figures: [{ what: `At ${wanted}`, figure: `minute ${whole(min)}` }, sinceLast(min - lastMin)],
        doubt: `19 times in 20: ${by}.`,
        say: ['A kitchen keeps to no formula: look again, and give it the later readings.'],
        put: [`${fitted}: minute ${put(min)}`]
      }
    }
    case 'cannot-tell': {
      const { code, why, lowMin } = answer
      if (code === 'bad-input') {
        return refuse({ code: 'outside', field: 'readings', what: why, instead: '' })
      }
      const not = lowMin === undefined ? '' : ` Not before minute ${whole(lowMin)}, if at all.`
      return {
        figures: [{ what: `At ${wanted}`, figure: 'can’t tell yet' }],
        say: [`${reasons[code]}${not}`],
        put: [fitted]
      }
    }
  }
}

const reasons = {
  'too-few': 'It takes three readings below the boil, at three different times.',
  'not-one-curve':
    'No one curve goes through these readings: leave out those from before the heat, the lid or the liquor was changed.',
  steady: 'The readings neither rise nor fall beyond doubt. Wait for a further reading.',
  'may-level-off': 'It may level off before it gets there. Wait for a further reading.',
  'moves-away': 'The readings move away from it.'
} as const

function sinceLast(min: number): Figure {
  const figure = showDuration(Math.max(1, Math.round(Math.abs(min))) * 60_000)
  return min >= 0 ? { what: 'After the last reading', figure } : { what: 'Before the last reading', figure }
}

const whole = (min: number): string => put(Math.round(min))
