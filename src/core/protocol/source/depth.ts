// How deep a text is nested, counted before it is composed: composing calls itself for every level, and a stack that
// gives way inside it can take the whole process down.
import type { CST } from 'yaml'

type Open = { token: CST.Token; depth: number }

/** Where the nesting first goes deeper than `most` levels; null: nowhere. Walks with a list, not with the stack. */
export function tooDeepAt(tokens: readonly CST.Token[], most: number): number | null {
  const open: Open[] = tokens.map((token) => ({ token, depth: 0 }))
  for (let next = open.pop(); next; next = open.pop()) {
    const { token, depth } = next
    if (token.type === 'document') {
      if (token.value) open.push({ token: token.value, depth })
    } else if ('items' in token) {
      if (depth >= most) return token.offset
      for (const item of token.items) {
        if (item.key) open.push({ token: item.key, depth: depth + 1 })
        if (item.value) open.push({ token: item.value, depth: depth + 1 })
      }
    }
  }
  return null
}
