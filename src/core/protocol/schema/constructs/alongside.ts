import * as z from 'zod/mini'
import { sequence } from '../fields.ts'
import { constructFields } from './shared.ts'

export const branchPattern = /^[\p{L}\p{N}][\p{L}\p{N}_-]{0,39}$/u

export const alongside = z
  .catchall(z.object(constructFields), sequence('A branch: its own list of steps. For example: [do: Stir the bath]'))
  .register(z.globalRegistry, { propertyNames: { pattern: branchPattern.source } })
