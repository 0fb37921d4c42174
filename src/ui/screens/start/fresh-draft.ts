import { bathSwatches } from '../../../core/colour/bath-swatches.ts'
import type { Input, Protocol } from '../../../core/protocol/model.ts'
import {
  showDuration,
  showMass,
  showNumber,
  showPercent,
  showTemperature,
  showVolume,
  type Units
} from '../../../core/quantity/index.ts'
import type { PotOnStove } from '../../kitchen.ts'
import type { StartDraft } from '../../parts/start-draft.ts'

export const burners = ['front left', 'front right', 'back left', 'back right'] as const
export const otherBurner = 'other'

/** A form that holds what the protocol presumes, for a pot beside those on the stove. */
export function freshDraft(protocol: Protocol, pots: readonly PotOnStove[], units: Units): StartDraft {
  const taken = pots.flatMap(({ state }) => (state.status === 'idle' ? [] : [state.pot]))
  const letter = freeLetter(pots)
  const colours = new Set(taken.map((pot) => pot.colour))
  const free = bathSwatches.find((swatch) => !colours.has(swatch.colour)) ?? bathSwatches[0]
  return {
    colourway: '',
    colour: free?.colour ?? '',
    colourChosen: false,
    burner: burners.find((burner) => taken.every((pot) => pot.burner !== burner)) ?? otherBurner,
    otherBurner: '',
    fibre: 'wool',
    skeins: [{ tag: `${letter}1`, mass: '' }],
    values: Object.fromEntries(protocol.inputs.map((input) => [input.id, shownDefault(input, units)])),
    bottles: Object.fromEntries(
      protocol.materials
        .filter((material) => material.kind !== 'water')
        .map((material) => [
          material.id,
          {
            name: material.label,
            percent: material.percent === null ? '' : showNumber(material.percent, 3),
            basis: material.basis ?? 'w/v',
            density: material.densityGPerML == null ? '' : showNumber(material.densityGPerML, 3)
          }
        ])
    ),
    room: '',
    boil: '',
    setOut: [],
    bathOf: '',
    yarnOf: ''
  }
}

/** The first letter no pot on the stove has. */
export function freeLetter(pots: readonly PotOnStove[]): string {
  const taken = new Set(pots.map(({ state }) => (state.status === 'idle' ? '' : state.pot.letter)))
  return 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('').find((letter) => !taken.has(letter)) ?? 'A'
}

/** A value in its canonical unit as the dyer would type it. */
export function shownValue(input: Input, value: number | string, units: Units): string {
  if (typeof value === 'string') return value
  switch (input.kind) {
    case 'mass':
      return showMass(value, units)
    case 'volume':
      return showVolume(value, units)
    case 'temperature':
      return showTemperature(value, units, { digits: 1 })
    case 'time':
      return showDuration(value)
    case 'percent':
      return showPercent(value, units)
    case 'number':
    case 'count':
      return showNumber(value, 3, units)
    case 'choice':
    case 'text':
      return String(value)
  }
}

function shownDefault(input: Input, units: Units): string {
  return input.default === null ? '' : shownValue(input, input.default, units).replaceAll('\u00a0', ' ')
}
