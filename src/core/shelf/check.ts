// Is what is to stand on the shelf one that can? Every problem at once, each at its field.
import { massLimit, some, volumeLimit } from '../chemistry/amounts/limits.ts'
import { strengthProblem } from '../chemistry/amounts/strength.ts'
import { bathLimits } from '../chemistry/bath/inputs.ts'
import { type Limit, outside } from '../chemistry/limits.ts'
import type { InputProblem } from '../protocol/model.ts'
import { dayMs } from './day.ts'
import type { Making } from './events.ts'
import { type Thing, unitOf } from './thing.ts'

const NAME_MOST = 80
const NOTE_MOST = 400
/** As far ahead of UTC as any clock on earth goes. */
const EAST_MOST_MS = 14 * 3_600_000
const alkalinityLimit: Limit = { ...bathLimits.alkalinityMgPerLCaCO3, field: 'alkalinityMgPerL' }
const partLimit: Limit = { field: 'parts', name: 'each part', unit: '', least: 0, most: 1e6, above: true }

/** All that is wrong with a thing; [] where it can stand. `atMs`: nothing was made after it. */
export function thingProblems(thing: Thing, atMs: number): InputProblem[] {
  const found = [nameProblem(thing.name), ...lengths(thing)]
  switch (thing.kind) {
    case 'stock':
      found.push(
        lacking('dye', thing.dye, 'Say what dye it is of.', 'Its generic name, as on the jar.'),
        at('percentWV', strengthProblem('A stock', { percent: thing.percentWV, basis: 'w/v' })),
        dayProblem(thing.madeOn, atMs),
        ...thing.parts.map(({ parts }) => outside(parts, partLimit))
      )
      break
    case 'acid':
      found.push(lacking('acid', thing.acid, 'Say what acid it is.', 'Acetic, citric, formic: as on the label.'))
      if (thing.percent !== null || thing.form === 'liquid') {
        const { percent, basis, densityGPerML } = thing
        const wrong = strengthProblem('An acid', { percent: percent ?? Number.NaN, basis, densityGPerML })
        const density = wrong?.code.startsWith('density') ? 'densityGPerML' : 'percent'
        found.push(percent === null ? noStrength : at(density, wrong))
      }
      break
    case 'yarn':
      found.push(lacking('fibre', thing.fibre, 'Say what fibre it is.', 'Wool; wool 75 %, nylon 25 %.'))
      break
    case 'water':
      if (thing.alkalinityMgPerL !== null) {
        const instead = 'A test strip, the supplier’s report: the figure is worth what its source is.'
        found.push(
          outside(thing.alkalinityMgPerL, alkalinityLimit),
          lacking('source', thing.source, 'Say where the figure comes from.', instead)
        )
      }
      break
    case 'pot':
      if (thing.volumeML !== null) found.push(outside(thing.volumeML, some(volumeLimit('volumeML', 'its volume'))))
      break
    case 'burner':
      break
  }
  return found.filter((problem) => problem !== null)
}

const noStrength: InputProblem = {
  code: 'missing',
  field: 'percent',
  what: 'A liquid acid needs its strength.',
  instead: 'Give the % of its label, and whether it is w/v or w/w. Labels rarely say: ask the maker.'
}

/** How much there is or was added: from nothing up, in the thing's own unit. */
export function levelProblem(thing: Thing, level: number, field: string, more = false): InputProblem | null {
  const limit = unitOf(thing) === 'g' ? massLimit(field, 'how much there is') : volumeLimit(field, 'how much there is')
  return outside(level, more ? some(limit) : limit)
}

export function makingProblems({ how, volumeML, powderG, from }: Making): InputProblem[] {
  const found = [outside(volumeML, some(volumeLimit('volumeML', 'the volume made')))]
  if (how === 'powder') found.push(outside(powderG ?? Number.NaN, some(massLimit('powderG', 'the powder weighed in'))))
  else if (from.length === 0) {
    const instead = 'Choose the bottle it is made from.'
    found.push({ code: 'missing', field: 'from', what: 'It is made from nothing.', instead })
  }
  for (const [i, one] of from.entries()) {
    found.push(outside(one.volumeML, some(volumeLimit(`from.${i}`, `the volume of ${one.name}`))))
  }
  const poured = from.reduce((sum, one) => sum + one.volumeML, 0)
  // Half a thousandth is rounding.
  if (how !== 'powder' && poured > volumeML * 1.0005) {
    const what = `${poured} mL of it do not fit into ${volumeML} mL.`
    found.push({ code: 'contradiction', field: 'volumeML', what, instead: `Give at least ${poured} mL.` })
  }
  return found.filter((problem) => problem !== null)
}

/** A day of the calendar, "2031-06-14", that has begun somewhere by then. */
function dayProblem(day: string | null, atMs: number): InputProblem | null {
  if (day === null) return null
  const field = 'madeOn'
  const ms = dayMs(day)
  if (ms === null) {
    const what = `"${day}" is no day.`
    return { code: 'not-a-day', field, what, instead: 'Give year, month and day, or leave it empty.' }
  }
  if (ms > atMs + EAST_MOST_MS) {
    return { code: 'not-yet', field, what: 'That day is still to come.', instead: 'Give the day it was made.' }
  }
  return null
}

function nameProblem(name: string): InputProblem | null {
  return lacking('name', name, 'It has no name.', 'Give it the name on its label.')
}

function lacking(field: string, text: string, what: string, instead: string): InputProblem | null {
  return text.trim() === '' ? { code: 'missing', field, what, instead } : null
}

function lengths(thing: Thing): (InputProblem | null)[] {
  return Object.entries(thing).map(([field, value]) => {
    const most = field === 'note' ? NOTE_MOST : NAME_MOST
    if (typeof value !== 'string' || value.length <= most) return null
    return { code: 'too-long', field, what: 'That is too long.', instead: `Say it in at most ${most} letters.` }
  })
}

function at(field: string, problem: Omit<InputProblem, 'field'> | null): InputProblem | null {
  return problem && { ...problem, field }
}
