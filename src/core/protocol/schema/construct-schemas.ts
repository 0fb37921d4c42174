import type * as z from 'zod/mini'
import type { ConstructWord } from '../written.ts'
import { alongside } from './constructs/alongside.ts'
import { choice } from './constructs/choice.ts'
import { forEach } from './constructs/for-each.ts'
import { repeat } from './constructs/repeat.ts'
import { until } from './constructs/until.ts'

export const constructSchemas: Record<ConstructWord, z.ZodMiniType> = {
  repeat,
  'for each': forEach,
  until,
  choice,
  alongside
}
