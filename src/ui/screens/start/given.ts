// From what was typed to what the programme is made of, with every problem at its field.
import type { Input, InputProblem, ProgrammeInputs, Protocol } from '../../../core/protocol/model.ts'
import { readBoilHere } from '../../../core/protocol/numbers/boil-here.ts'
import {
  type QuantityProblem,
  type Read,
  readMass,
  readNumber,
  readPercent,
  readTemperature,
  readVolume,
  type Units
} from '../../../core/quantity/index.ts'
import type { BottleDraft, StartDraft } from '../../parts/start-draft.ts'

/** What bottles of the shelf say of a material, by its id; those of the others are typed. */
export type FromShelf = ProgrammeInputs['materials']
export type Given = { inputs: ProgrammeInputs; problems: InputProblem[] }

/** Reads the form. `keptBoil`: where water boils in this kitchen, as the settings have it, for a form that says nothing. What can't be read stands among the problems, all of them at once; `inputs` then holds the rest. */
export function givenOf(
  protocol: Protocol,
  draft: StartDraft,
  units: Units,
  keptBoil = '',
  shelf: FromShelf = {}
): Given {
  const problems: InputProblem[] = []
  const inputs: ProgrammeInputs = {
    skeins: skeinsOf(draft, units, problems),
    values: Object.fromEntries(
      protocol.inputs.flatMap((input) => {
        const value = withUnit(input, draft.values[input.id] ?? '', units)
        return value === '' ? [] : [[input.id, value]]
      })
    ),
    materials: Object.fromEntries(
      Object.entries(draft.bottles).map(([id, bottle]) => [id, shelf[id] ?? bottleOf(id, bottle, problems)])
    ),
    roomC: temperatureOf('roomC', draft.room, units, problems),
    boilC: boilOf(draft, units, keptBoil, problems),
    ...numbersGiven(draft, units, problems)
  }
  return { inputs, problems }
}

function boilOf(draft: StartDraft, units: Units, kept: string, problems: InputProblem[]): number | null {
  const text = draft.boil.trim() === '' ? kept : draft.boil
  return numberOf(text, (written) => boilRead(written, units), 'boilC', problems)
}

function boilRead(text: string, units: Units): Read<number> {
  const read = readBoilHere(text, units)
  return read.ok ? { ok: true, value: read.value.boilC } : read
}

/** What stands behind the size of a pot. */
export function potUnit({ volume }: Units): 'L' | 'US quart' | 'imperial quart' {
  if (volume === 'metric') return 'L'
  return volume === 'us' ? 'US quart' : 'imperial quart'
}

/** What the numbers count on. Nothing of it is asked for: where it is not given, they say what is presumed. */
function numbersGiven(draft: StartDraft, units: Units, problems: InputProblem[]): Partial<ProgrammeInputs> {
  const kitchen = units.volume === 'metric' ? null : units.volume
  const bareUnit = potUnit(units)
  const potML = numberOf(draft.pot ?? '', (text) => readVolume(text, { kitchen, bareUnit }), 'potML', problems)
  const alkalinity = numberOf(
    draft.alkalinity ?? '',
    (text) => readNumber(text.replace(/\s*mg\s*\/\s*l$/i, ''), { least: 0, most: 1000 }),
    'alkalinity',
    problems
  )
  if (potML === 0) {
    problems.push(problem('pot-nothing', 'potML', 'A pot holds more than nothing.', `Write it in ${bareUnit}.`))
  }
  return {
    ...(potML !== null && potML > 0 && { potML }),
    ...(alkalinity !== null && { alkalinityMgPerL: alkalinity }),
    ...(draft.carries && { carries: draft.carries }),
    ...(draft.countAll && { countAll: true }),
    ...(draft.keptML !== undefined && { liquorMostML: draft.keptML }),
    ...(draft.lengthen && { lengthen: true })
  }
}

function skeinsOf(draft: StartDraft, units: Units, problems: InputProblem[]): ProgrammeInputs['skeins'] {
  const tags = new Set<string>()
  return draft.skeins.map(({ tag, mass }, i) => {
    const name = tag.trim()
    if (name === '')
      problems.push(
        problem(
          'tag-missing',
          `skeins.${i}.tag`,
          'This skein has no tag.',
          `Write what is on it, for example A${i + 1}.`
        )
      )
    else if (tags.has(name))
      problems.push(
        problem('tag-twice', `skeins.${i}.tag`, `Two skeins are tagged ${name}.`, 'Give each skein a tag of its own.')
      )
    tags.add(name)
    const field = `skeins.${i}.mass`
    if (mass.trim() === '') {
      problems.push(problem('mass-missing', field, 'The weight is missing.', 'Weigh it dry, for example 50 g.'))
      return { tag: name, massG: 0 }
    }
    const read = readMass(mass, { bareUnit: units.mass === 'us' ? 'oz' : 'g' })
    if (!read.ok) problems.push(fromQuantity(field, read.problem))
    else if (!(read.value > 0))
      problems.push(
        problem('mass-nothing', field, 'A skein weighs more than nothing.', 'Weigh it dry, for example 50 g.')
      )
    return { tag: name, massG: read.ok ? read.value : 0 }
  })
}

function bottleOf(id: string, bottle: BottleDraft, problems: InputProblem[]): ProgrammeInputs['materials'][string] {
  const field = (part: string): string => `materials.${id}.${part}`
  if (bottle.name.trim() === '') {
    problems.push(problem('name-missing', field('name'), 'The bottle has no name.', 'Write what its label says.'))
  }
  const percent = numberOf(bottle.percent, (text) => readPercent(text, { bare: true }), field('percent'), problems)
  if (percent !== null && percent > 100) {
    problems.push(
      problem('percent-over', field('percent'), `${percent} % is more than all of it.`, 'Write 100 % or less.')
    )
  }
  const density =
    bottle.basis === 'w/v'
      ? null
      : numberOf(bottle.density, (text) => readNumber(text, { least: 0.5, most: 2 }), field('density'), problems)
  if (bottle.basis === 'w/w' && percent !== null && bottle.density.trim() === '') {
    const instead = 'Write the g/mL from the label or the data sheet, or weigh 100 mL of it.'
    problems.push(problem('density-missing', field('density'), 'By weight (w/w) needs the density.', instead))
  }
  const acid = bottle.acid ? { acid: bottle.acid } : {}
  return { name: bottle.name.trim(), percent, basis: bottle.basis, densityGPerML: density, ...acid }
}

type Reader = (text: string) => Read<number>

function numberOf(text: string, read: Reader, field: string, problems: InputProblem[]): number | null {
  if (text.trim() === '') return null
  const got = read(text)
  if (got.ok) return got.value
  problems.push(fromQuantity(field, got.problem))
  return null
}

function temperatureOf(field: string, text: string, units: Units, problems: InputProblem[]): number | null {
  if (text.trim() === '') return null
  const read = readTemperature(text, { bareUnit: units.temperature })
  if (read.ok) return read.value.tempC
  problems.push(fromQuantity(field, read.problem))
  return null
}

/** A bare number gets the unit the field asks in. */
function withUnit(input: Input, text: string, units: Units): string {
  const value = text.trim()
  if (!bare(value)) return value
  switch (input.kind) {
    case 'mass':
      return `${value} ${units.mass === 'us' ? 'oz' : 'g'}`
    case 'volume':
      return `${value} mL`
    case 'temperature':
      return `${value} °${units.temperature}`
    case 'time':
      return `${value} min`
    case 'percent':
      return `${value} %`
    case 'number':
    case 'count':
    case 'choice':
    case 'text':
      return value
  }
}

function bare(text: string): boolean {
  return /^[+-]?\d+([.,]\d+)?$/.test(text.trim())
}

function problem(code: string, field: string, what: string, instead: string): InputProblem {
  return { code, field, what, instead }
}

function fromQuantity(field: string, { code, found, instead }: QuantityProblem): InputProblem {
  return problem(code, field, found === '' ? 'Nothing stands here.' : `“${found}” can’t be read.`, instead)
}

/** What is said at one field, and what belongs to none. */
export function problemAt(problems: readonly InputProblem[], ...fields: string[]): string | null {
  const mine = problems.filter((each) => fields.includes(each.field))
  return mine.length === 0 ? null : mine.map((each) => `${each.what} ${each.instead}`).join(' ')
}
