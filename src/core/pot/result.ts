import type { Refusal } from './commands.ts'
import type { ResultValue } from './events.ts'
import { refuse } from './tell.ts'

const NAME_MOST = 40
const TEXT_MOST = 500

/** What no result may be; what each known one takes is asked where it is typed (core/record/results.ts). */
export function badResult(what: string, value: ResultValue): Refusal | null {
  const written = value.kind === 'text' ? value.text : String(value.value)
  if (!what.trim() || !written.trim()) return refuse('empty', 'Say what it is and what came of it.').refusal
  if (what.length > NAME_MOST || written.length > TEXT_MOST)
    return refuse('too-long', `At most ${NAME_MOST} letters for its name and ${TEXT_MOST} for what it is.`).refusal
  const number = value.kind === 'text' || Number.isFinite(value.value)
  return number ? null : refuse('wrong-answer', 'That is no number.').refusal
}
