import * as z from 'zod/mini'
import { timesMost } from '../../source/limits.ts'
import { sequence } from '../fields.ts'
import { constructFields, countOrInput } from './shared.ts'

export const repeat = z.strictObject({
  ...constructFields,
  times: countOrInput(timesMost, 'How often. For example: 4'),
  steps: sequence('What is repeated. For example: [do: Stir the bath]')
})
