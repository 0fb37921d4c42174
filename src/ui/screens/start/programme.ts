// The form as a programme, worked out again with each change.

import { opened } from '../../../core/protocol/free-pot.ts'
import type { InputProblem, Programme, ProgrammeInputs, Protocol } from '../../../core/protocol/model.ts'
import { type Numbers, numbersOf } from '../../../core/protocol/numbers/numbers.ts'
import { inFahrenheit } from '../../../core/protocol/programme/in-fahrenheit.ts'
import { programmeOf } from '../../../core/protocol/programme.ts'
import type { Units } from '../../../core/quantity/index.ts'
import type { StartDraft } from '../../parts/start-draft.ts'
import { placed } from './field-id.ts'
import { otherBurner } from './fresh-draft.ts'
import { type FromShelf, givenOf } from './given.ts'

export type Worked = { inputs: ProgrammeInputs; programme: Programme | null; problems: InputProblem[] }

/** `keptBoil`: where water boils here, as the settings have it. */
export function workOut(
  protocol: Protocol,
  draft: StartDraft,
  units: Units,
  keptBoil = '',
  shelf: FromShelf = {}
): Worked {
  const given = givenOf(protocol, draft, units, keptBoil, shelf)
  const problems = [...given.problems, ...missing(protocol, draft)]
  const made = programmeOf(protocol, given.inputs)
  if (made.ok) {
    if (given.problems.length > 0) return { inputs: given.inputs, programme: null, problems }
    const programme = units.temperature === 'F' ? inFahrenheit(made.programme) : made.programme
    return { inputs: given.inputs, programme: { ...programme, given: given.inputs }, problems }
  }
  // What this screen has said about a field need not be said twice.
  const said = new Set(problems.map((problem) => problem.field))
  const more = made.problems
    .map((problem) => placed(problem, protocol, draft))
    .filter((problem) => !said.has(problem.field))
  return { inputs: given.inputs, programme: null, problems: [...problems, ...more] }
}

/** The numbers of a programme that the form has made. */
export function numbersOfDraft(protocol: Protocol, draft: StartDraft, units: Units, programme: Programme): Numbers {
  const { keptML, ...unlimited } = draft
  const wanted = keptML === undefined ? programme : workOut(protocol, unlimited, units).programme
  return numbersOf(programme, {
    usedBath: draft.bathOf !== '',
    wantedRatio: wanted?.liquorRatio ?? null,
    earlier: draft.earlier ?? null
  })
}

/** A free pot: its one step is open. */
export function workOutFree(protocol: Protocol, draft: StartDraft, units: Units): Worked {
  const worked = workOut(protocol, draft, units)
  return { ...worked, programme: worked.programme && opened(worked.programme) }
}

function missing(protocol: Protocol, draft: StartDraft): InputProblem[] {
  const problems: InputProblem[] = []
  if (draft.burner === otherBurner && draft.otherBurner.trim() === '') {
    problems.push({
      code: 'burner-missing',
      field: 'burner',
      what: 'The place has no name.',
      instead: 'Write where the pot stands.'
    })
  }
  if (draft.fibre.trim() === '') {
    problems.push({
      code: 'fibre-missing',
      field: 'fibre',
      what: 'The fibre is missing.',
      instead: 'Write what the label says, for example wool.'
    })
  }
  if (protocol.parent === 'bath' && draft.bathOf === '') {
    problems.push({
      code: 'bath-missing',
      field: 'bathOf',
      what: 'This protocol goes on in a used bath.',
      instead: 'Choose which.'
    })
  }
  if (protocol.parent === 'batch' && draft.yarnOf === '') {
    problems.push({
      code: 'yarn-missing',
      field: 'yarnOf',
      what: 'This protocol dyes over dyed yarn.',
      instead: 'Choose which batch.'
    })
  }
  return problems
}
