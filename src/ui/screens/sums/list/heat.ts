// Heat: where water boils, how long a ramp takes, what it takes, and when a pot will be there.
import {
  boilingPointC,
  isRefused,
  longerHold,
  rampMin,
  rampPowerKW,
  rampRate
} from '../../../../core/chemistry/index.ts'
import { showDuration, showNumber, showRate, showTemperature } from '../../../../core/quantity/index.ts'
import { choice, chosen, optional, type Typed } from '../field.ts'
import { altitude, liquor, mass, minutes, power, pressure, rate, temperature } from '../quantities.ts'
import { put } from '../shown.ts'
import { type Sum, sum } from '../sum.ts'
import { timeTo } from './time-to.ts'

const boil = sum({
  id: 'boil',
  title: 'Where water boils here',
  ask: 'At which temperature does an open pot boil at this height?',
  group: 'Heat',
  words: 'altitude boiling point pressure barometer mountain',
  uses: ['boilingPointC'],
  fields: {
    by: choice('From', [
      ['altitude', 'the height'],
      ['pressure', 'a barometer']
    ]),
    altitudeM: altitude('Height above the sea', {
      hint: 'As a map gives it.',
      when: (typed: Typed) => chosen(typed, 'by', 'altitude')
    }),
    stationPressureHPa: pressure('The barometer reads', {
      hint: 'Beside the pot. The weather report corrects it to the sea: that is another figure.',
      when: (typed: Typed) => chosen(typed, 'by', 'pressure')
    })
  },
  work({ by, altitudeM, stationPressureHPa }, units) {
    const answer = boilingPointC(by === 'altitude' ? { altitudeM } : { stationPressureHPa })
    if (isRefused(answer)) return answer
    const weather = units.temperature === 'C' ? '0.8 °C' : '1.4 °F'
    return {
      figures: [{ what: 'Water boils at', figure: showTemperature(answer, units, { digits: 1 }) }],
      doubt: by === 'altitude' ? `The weather moves it by up to ${weather}.` : undefined,
      say: ['No open pot gets hotter: where a method asks for more, hold it at the boil, and longer.'],
      put: [
        by === 'altitude'
          ? `${put(altitudeM)} m above the sea: ${put(answer)} °C`
          : `${put(stationPressureHPa)} hPa: ${put(answer)} °C`
      ]
    }
  }
})

const coolerHold = sum({
  id: 'cooler-hold',
  title: 'A hold that goes on cooler',
  ask: 'How much longer, where the pot does not get as hot as the method asks?',
  group: 'Heat',
  words: 'boil altitude longer time arrhenius',
  uses: ['longerHold'],
  fields: {
    holdMin: minutes('Hold in the method'),
    meantC: temperature('At'),
    atC: temperature('The pot holds', { hint: 'The boil here, or what the thermometer says.' })
  },
  work(given) {
    const answer = longerHold(given)
    if (isRefused(answer)) return answer
    const min = (value: number): string => showDuration(Math.round(value) * 60_000)
    const { leastMin, likelyMin, mostMin } = answer
    return {
      figures: [{ what: 'Hold longer by about', figure: min(likelyMin) }],
      doubt: `${min(leastMin)} to ${min(mostMin)}.`,
      say: ['A model of other dyes than yours: go by how clear the bath is.'],
      put: [
        `${put(given.holdMin)} min at ${put(given.atC)} °C in place of ${put(given.meantC)} °C: ${put(likelyMin)} min more`
      ]
    }
  }
})

const rampTime = sum({
  id: 'ramp-time',
  title: 'How long a ramp takes',
  ask: 'How long from this temperature to that, at this rate?',
  group: 'Heat',
  words: 'heat up rise cool rate minutes',
  uses: ['rampMin'],
  fields: { fromC: temperature('From'), toC: temperature('To'), rateCPerMin: rate('Rate', { start: '1' }) },
  work(given) {
    const answer = rampMin(given)
    if (isRefused(answer)) return answer
    const { fromC, toC, rateCPerMin } = given
    const [high, low] = fromC > toC ? [fromC, toC] : [toC, fromC]
    return {
      figures: [{ what: 'It takes', figure: showDuration(answer < 2 ? answer * 60_000 : Math.round(answer) * 60_000) }],
      put: [`(${put(high)} - ${put(low)}) °C ÷ ${put(rateCPerMin)} °C/min = ${put(answer)} min`]
    }
  }
})

const heated = {
  liquorL: liquor('Liquor'),
  goodsKg: optional(mass('Goods'), 0),
  potKJPerK: optional(mass('Weight of the pot', { hint: 'Of steel: 0.5 kJ for each kg and °C (from memory).' }), 0)
}

/** kJ for each °C, of a g of steel. */
const STEEL_KJ_PER_K_G = 0.0005

const inKilos = (given: { liquorL: number; goodsKg: number; potKJPerK: number }): typeof given => ({
  liquorL: given.liquorL / 1000,
  goodsKg: given.goodsKg / 1000,
  potKJPerK: given.potKJPerK * STEEL_KJ_PER_K_G
})
const heldBy = ({ liquorL, goodsKg, potKJPerK }: ReturnType<typeof inKilos>): string =>
  `4.186 × ${put(liquorL)} L + 1.4 × ${put(goodsKg)} kg + ${put(potKJPerK)}`
const losses =
  'What the pot gives off is not in it. A ring brings less than its plate says, a gas ring about half (from memory).'

const rampPower = sum({
  id: 'ramp-power',
  title: 'Power for a ramp',
  ask: 'How strong must the ring be for this rate?',
  group: 'Heat',
  words: 'kW watt burner heat up',
  uses: ['rampPowerKW'],
  fields: { ...heated, rateCPerMin: rate('Rate', { start: '1' }) },
  work(given) {
    const held = inKilos(given)
    const answer = rampPowerKW({ ...held, rateCPerMin: given.rateCPerMin })
    if (isRefused(answer)) return answer
    return {
      figures: [{ what: 'Into the bath', figure: `${showNumber(answer, 2)}\u00a0kW` }],
      say: [losses],
      put: [`(${heldBy(held)}) × ${put(given.rateCPerMin)} °C/min ÷ 60 = ${put(answer)} kW`]
    }
  }
})

const rampSpeed = sum({
  id: 'ramp-rate',
  title: 'How fast a ring heats',
  ask: 'How fast does this power heat the bath?',
  group: 'Heat',
  words: 'kW watt burner rate rise',
  uses: ['rampRate'],
  fields: { ...heated, powerKW: power('Power that goes into the bath') },
  work(given, units) {
    const held = inKilos(given)
    const answer = rampRate({ ...held, powerKW: given.powerKW })
    if (isRefused(answer)) return answer
    return {
      figures: [{ what: 'It rises by', figure: showRate(Number(answer.toFixed(1)), units) }],
      say: [losses],
      put: [`${put(given.powerKW)} kW × 60 ÷ (${heldBy(held)}) = ${put(answer)} °C/min`]
    }
  }
})

export const heatSums: readonly Sum[] = [timeTo, boil, coolerHold, rampTime, rampPower, rampSpeed]
