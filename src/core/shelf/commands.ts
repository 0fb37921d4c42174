// What a person may ask of a thing on the shelf. Time, id and source come as data in the header, as for pots.
import type { InputProblem } from '../protocol/model.ts'
import type { Making } from './events.ts'
import type { Stock, Thing } from './thing.ts'

/** `was`: what the screen said was left. */
export type ShelfCommand =
  | { type: 'AddThing'; thing: Thing; level: number | null }
  | { type: 'ChangeThing'; thing: Thing; why: string }
  | { type: 'MakeStock'; thing: Stock; making: Making }
  | { type: 'Refill'; amount: number }
  | { type: 'CorrectLevel'; was: number | null; now: number; why: string }
  | { type: 'PutAway'; why: string }
  | { type: 'BringBack' }
  | { type: 'UseUp'; was: number | null }
  | { type: 'Discard'; was: number | null; how: string }

export type ShelfRefusalCode = 'not-there' | 'there-already' | 'wrong-fields' | 'not-counted' | 'away' | 'not-away'

/** A refusal is a value. `problems`: each wrong field by its name, what is wrong, and what would be right. */
export type ShelfRefusal = { code: ShelfRefusalCode; say: string; problems: InputProblem[] }
