import * as z from 'zod/mini'
import { act, asking } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const note = stepKind({
  word: 'note',
  behaviour: 'ask',
  about: 'Asks for something to be written down. With record: residue it asks for a judgement.',
  short: 'say',
  fields: { say: z.optional(line(80, 'What to write down. For example: How did it take?')) },
  draft: (fields, r) => {
    const records = fields.record === undefined ? [] : [fields.record].flat()
    if (records.length === 1 && records[0] === 'residue') {
      const question = { kind: 'grade', of: 'bath', enough: null } as const
      return [asking({ call: 'Judge what is left', knot: 'Residue', done: 'judged' }, question, [15, 40, 90])]
    }
    const say = r.textOr(fields.say, ['say'], records.length > 0 ? `Write down: ${records.join(', ')}` : 'Write a note')
    // What must be recorded has its own ways in; a text would not stand for it.
    if (records.length > 0)
      return [act({ call: say, knot: 'Record', done: 'written' }, [20, 60, 180], { shape: 'ring' })]
    return [asking({ call: say, knot: 'Note', done: 'written' }, { kind: 'text', ask: say }, [20, 60, 180])]
  }
})
