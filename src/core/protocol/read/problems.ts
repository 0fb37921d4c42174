import type { Problem } from '../model.ts'
import type { ProblemCode } from '../problem-codes.ts'
import type { Place } from '../source/located.ts'

/** More than anybody mends in one go; a hostile file could have any number. */
const problemsMost = 200

/** Gathers the problems of a text. */
export class Problems {
  readonly list: Problem[] = []

  say(at: Place, where: string, code: ProblemCode, what: string, instead: string): void {
    if (this.list.length < problemsMost) {
      this.list.push({ code, line: at.line, column: at.column, where, what: short(what), instead: short(instead) })
    }
  }

  /** In the order of the text, each once. */
  sorted(): Problem[] {
    const order = [...this.list].sort((a, b) => a.line - b.line || a.column - b.column)
    const seen = new Set<string>()
    return order.filter(({ code, line, column, what }) => {
      const key = `${code} ${line} ${column} ${what}`
      if (seen.has(key)) return false
      seen.add(key)
      return true
    })
  }
}

function short(text: string): string {
  return text.length > 300 ? `${text.slice(0, 299)}…` : text
}

/** "steps[3].hold.for" */
export function whereOf(base: string, path: readonly (string | number)[]): string {
  return path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`),
    base
  )
}
