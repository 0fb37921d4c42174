import { readMaterialName } from './material-name.ts'
import { good, type Read } from './read.ts'
import type { AmountKind } from './written-amount.ts'

const shareWords: [RegExp, number][] = [
  [/^(?:all|the whole|whole)(?: of)?(?= |$)/i, 1],
  [/^(?:(?:a|one) )?half(?: of)?(?= |$)/i, 1 / 2],
  [/^(?:a|one)[ -]third(?: of)?(?= |$)/i, 1 / 3],
  [/^two[ -]thirds(?: of)?(?= |$)/i, 2 / 3],
  [/^(?:a|one)[ -]quarter(?: of)?(?= |$)/i, 1 / 4],
  [/^three[ -]quarters(?: of)?(?= |$)/i, 3 / 4]
]
const restWords = /^(?:the )?(?:rest|remainder)(?: of)?(?= |$)/i

/** Reads shares given in words: "half of the acid", "all of acid", "the rest of the acid". Null: no such words. */
export function readShareInWords(text: string): Read<AmountKind> | null {
  const rest = restWords.exec(text)
  if (rest) {
    const name = readMaterialName(text.slice(rest[0].length))
    return name.ok ? good({ kind: 'rest', of: name.value }) : name
  }
  for (const [pattern, share] of shareWords) {
    const words = pattern.exec(text)
    if (!words) continue
    const name = readMaterialName(text.slice(words[0].length))
    return name.ok ? good({ kind: 'share', share, of: name.value }) : name
  }
  return null
}
