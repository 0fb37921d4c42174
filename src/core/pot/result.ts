import type { Refusal } from './commands.ts'
import type { ResultValue } from './events.ts'
import { refuse } from './tell.ts'

export const RESULT_NAME_MOST = 40
export const RESULT_TEXT_MOST = 500

/** What no result may be; what each known one takes is asked where it is typed (core/record/results.ts). */
export function badResult(what: string, value: ResultValue): Refusal | null {
  const text = value.kind === 'text' ? value.text.trim() : Number.isFinite(value.value)
  return what.trim() && text && what.length <= RESULT_NAME_MOST && String(text).length <= RESULT_TEXT_MOST
    ? null
    : refuse('wrong-answer', 'A result needs a name of 40 letters at most and a number, or words of 500 at most.')
        .refusal
}
