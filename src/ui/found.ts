// What the Dye book finds by beyond the lines of the book.
import type { Found } from '../core/record/find.ts'
import type { BookLine } from './kitchen.ts'

export type KitchenFound = {
  /** What was found in journals so far, by pot. */
  kept(): Promise<Map<string, Found>>
  /** Reads the journals of these lines, the given order, and keeps what they say. `each` gets every handful and says
   * whether to go on. */
  lookThrough(lines: readonly BookLine[], each: (found: Found[]) => boolean): Promise<void>
}
