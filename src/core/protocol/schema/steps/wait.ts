import { waiting } from '../../draft.ts'
import type { Until } from '../../model.ts'
import { capital } from '../../words.ts'
import { stepKind } from '../step-kind.ts'
import { readWait, waitFields } from '../wait-fields.ts'

export const wait = stepKind({
  word: 'wait',
  behaviour: 'wait',
  about: 'Waits for a time, a temperature, a moment, a person, a judgement, or several of them.',
  short: 'until',
  fields: waitFields,
  draft: (fields, r) => {
    const read = readWait(fields, r, false)
    const words = wordsOfUntil(read.until)
    return [waiting({ doing: 'Waiting', done: 'over', ...words }, read, { away: fields.away === true })]
  }
})

/** What is looked for is what is called out. */
function wordsOfUntil(until: Until[]): { call: string; knot: string } {
  const asked = until.find((one) => one.kind !== 'moment') ?? until[0]
  switch (asked?.kind) {
    case 'person':
      return { call: `${capital(asked.ask)}?`, knot: capital(asked.ask).slice(0, 24) }
    case 'temperature':
      return { call: 'Read the temperature', knot: `${Math.round(asked.lowC ?? asked.highC ?? 0)} °C` }
    case 'judgement':
      return { call: asked.question.kind === 'ph' ? 'Test the pH' : 'Judge the bath', knot: 'Judge' }
    case 'moment':
    case undefined:
      return { call: 'Wait is over', knot: 'Wait' }
  }
}
