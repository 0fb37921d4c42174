import { act } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const doing = stepKind({
  word: 'do',
  behaviour: 'act',
  about: 'Anything else, in your own words.',
  short: 'say',
  fields: { say: line(80, 'The act, short and imperative. For example: Stir the bath') },
  draft: (fields, r) => {
    const say = r.text(fields.say, ['say'])
    return [act({ call: say, done: 'done', knot: say.slice(0, 24) }, [20, 60, 180])]
  }
})
