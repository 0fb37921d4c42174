import { act } from '../../draft.ts'
import { stepKind } from '../step-kind.ts'

export const spin = stepKind({
  word: 'spin',
  behaviour: 'act',
  about: 'Spins the water out.',
  short: null,
  fields: {},
  draft: () => [act({ call: 'Spin', done: 'spun', knot: 'Spin' }, [60, 180, 300], { yarn: 'out' })]
})
