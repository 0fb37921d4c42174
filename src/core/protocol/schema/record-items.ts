import type { RecordItem } from '../model.ts'

/** What can be asked for before a step is closed. */
export const recordItems = [
  'temperature',
  'ph',
  'level',
  'residue',
  'photo',
  'note',
  'wet mass',
  'dry mass'
] as const satisfies readonly RecordItem[]
