// What one pot brings to a protocol: goods, values, bottles, room. Checked, with every problem at once.
import { gPerMLOf, mixedGPerML } from '../../chemistry/amounts/formulas.ts'
import { goodsLeastG, goodsMostG } from '../../chemistry/amounts/limits.ts'
import { strengthProblem } from '../../chemistry/amounts/strength.ts'
import { metricUnits, showMass } from '../../quantity/index.ts'
import { checkInput, quantityText } from '../inputs.ts'
import type { InputProblem, Material, ProgrammeInputs, Protocol } from '../model.ts'

/** A material with what is really in the bottle. */
export type Stuff = Material & {
  /** The bottle's name, else the material's. */
  name: string
  /** Grams of the active substance in a millilitre; null: not known, or weighed as it is. */
  gPerML: number | null
  strengthShown: string | null
  /** It comes out of a bottle on the shelf. */
  onShelf: boolean
}

export type Setting = {
  kitchen: Protocol['kitchen']
  skeins: { tag: string; massG: number }[]
  goodsMassG: number
  roomC: number
  boilC: number
  lengthen: boolean
  liquorMostML: number | null
  quantities: Record<string, string>
  shown: Record<string, string>
  inputs: { id: string; label: string; shown: string }[]
  stuff: Map<string, Stuff>
}

/** A room from -10 to 50 °C, a boiling point from 70 to 105 °C. */
export function settingOf(protocol: Protocol, given: ProgrammeInputs, problems: InputProblem[]): Setting {
  const say = (code: string, field: string, what: string, instead: string): void => {
    problems.push({ code, field, what, instead })
  }
  const goodsMassG = massOf(given.skeins, say)
  const roomC = given.roomC ?? protocol.roomC
  if (!(roomC >= -10 && roomC <= 50))
    say('room-outside', 'roomC', 'No kitchen is that warm or cold.', 'Give −10 to 50 °C.')
  const boilC = given.boilC ?? 100
  if (!(boilC >= 70 && boilC <= 105)) {
    say('boil-outside', 'boilC', 'Water does not boil at that in an open pot.', 'Give 70 to 105 °C.')
  }
  const setting: Setting = {
    kitchen: protocol.kitchen,
    skeins: given.skeins,
    goodsMassG,
    roomC,
    boilC,
    lengthen: given.lengthen === true,
    liquorMostML: mostOf(given.liquorMostML, say),
    quantities: {},
    shown: {},
    inputs: [],
    stuff: new Map(
      protocol.materials.map((m) => [
        m.id,
        stuffOf(m, Object.hasOwn(given.materials, m.id) ? given.materials[m.id] : undefined, say)
      ])
    )
  }
  for (const input of protocol.inputs) {
    const typed = Object.hasOwn(given.values, input.id) ? given.values[input.id] : input.default
    if (typed === null || typed === undefined || typed === '') {
      say('value-missing', input.id, `${input.ask} has no answer.`, 'Answer it.')
      continue
    }
    const read = checkInput(input, typed, protocol.kitchen)
    if (!read.ok) {
      problems.push(read.problem)
      continue
    }
    setting.quantities[input.id] = quantityText(input.kind, read.value)
    setting.shown[input.id] = read.shown
    setting.inputs.push({ id: input.id, label: input.ask, shown: read.shown })
  }
  mixStocks(setting.stuff)
  return setting
}

type Say = (code: string, field: string, what: string, instead: string) => void

function massOf(skeins: ProgrammeInputs['skeins'], say: Say): number {
  if (skeins.length === 0) {
    say('mass-missing', 'skeins', 'No goods are given.', 'Give at least one skein with its dry weight.')
    return 1
  }
  const seen = new Set<string>()
  for (const { tag, massG } of skeins) {
    if (!(massG >= goodsLeastG && massG <= goodsMostG)) {
      say('mass-outside', `skeins.${tag}`, `${tag} has no usable weight.`, 'Give 0.05 g to 100 kg.')
    }
    if (seen.has(tag)) say('tag-twice', `skeins.${tag}`, `Two skeins are tagged ${tag}.`, 'Give each its own tag.')
    seen.add(tag)
  }
  const sum = skeins.reduce((total, { massG }) => total + massG, 0)
  if (sum > goodsMostG)
    say('mass-outside', 'skeins', `${showMass(sum, metricUnits)} is more than a pot holds.`, 'Give less.')
  return Number.isFinite(sum) && sum > 0 ? sum : 1
}

function mostOf(mostML: number | null | undefined, say: Say): number | null {
  if (mostML === null || mostML === undefined) return null
  if (mostML > 0 && mostML <= 1e6) return mostML
  say('liquor-outside', 'potML', 'No bath is kept to that.', 'Give more than 0 mL and at most 1000 L.')
  return null
}

type Bottle = ProgrammeInputs['materials'][string]

function stuffOf(material: Material, bottle: Bottle | undefined, say: Say): Stuff {
  const field = `materials.${material.id}`
  const percent = bottle ? (bottle.percent ?? material.percent) : material.percent
  const own = bottle !== undefined && bottle.percent !== null
  const basis = own ? bottle.basis : (material.basis ?? 'w/v')
  const density = own ? bottle.densityGPerML : (material.densityGPerML ?? null)
  const name = bottle && bottle.name.trim() !== '' ? bottle.name.trim() : material.label
  const onShelf = (bottle?.shelf?.length ?? 0) > 0
  // A mix that stands mixed on the shelf is as strong as its label says and is mixed of nothing now.
  const { parts, ...unmixed } = material
  const stuff: Stuff = {
    ...unmixed,
    ...(parts && !onShelf ? { parts } : {}),
    percent,
    name,
    gPerML: null,
    strengthShown: null,
    onShelf
  }
  if (percent === null) return stuff
  const wrong = strengthProblem(name, { percent, basis, densityGPerML: density })
  if (wrong) {
    say(wrong.code, field, wrong.what, wrong.instead)
    return stuff
  }
  if (basis === 'w/v') return { ...stuff, gPerML: gPerMLOf(percent, null), strengthShown: `${percent} % w/v` }
  const strengthShown = `(${percent} % w/w × ${density} g/mL)`
  const gPerML = gPerMLOf(percent, density)
  // Cautions go by % w/v, which is what reaches the eye.
  return {
    ...stuff,
    percent: Math.round(gPerML * 1e4) / 100,
    gPerML,
    strengthShown
  }
}

/** A mixed stock is as strong as its parts of dye make it. */
function mixStocks(stuff: Map<string, Stuff>): void {
  for (const [id, mix] of stuff) {
    if (!mix.parts || mix.parts.length === 0) continue
    const all = mix.parts.map(({ id: part, parts }) => ({ parts, gPerML: stuff.get(part)?.gPerML ?? null }))
    const known = all.flatMap(({ parts, gPerML }) => (gPerML === null ? [] : [{ parts, gPerML }]))
    if (known.length < all.length) continue
    const gPerML = mixedGPerML(known)
    const percent = Math.round(gPerML * 1e4) / 100
    stuff.set(id, { ...mix, gPerML, percent, strengthShown: `${percent} % w/v` })
  }
}
