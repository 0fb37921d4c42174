import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const root = new URL('../../../', import.meta.url).pathname

/** Phrases that would let somebody leave a lit burner. */
const leave =
  /\b(safe|fine|ok|okay|free) to (go|leave|walk away|step away|step out)\b|\byou (can|may|could) (now )?(go|leave|walk away|step away|step out)\b|\bfree to go\b|\b(can|may) be left\b|\bno need to (stay|watch|stand)\b|\bneeds? no (watching|attention)\b|\bleave (it|the pot|the bath) (alone|unattended|unwatched|to (boil|simmer|heat|hold))\b/i

function* textFiles(folder: string): Generator<string> {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) yield* textFiles(path)
    else if (/\.(ts|tsx|mjs|html|json|yaml|yml|md|css)$/.test(entry.name)) yield path
  }
}

/** Comments may speak about the rule; whatever may reach a screen may not break it. */
const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1')

describe('no text lets anybody leave the heat', () => {
  it.each(['src', 'protocols', 'public'])('nothing in %s says so', (folder) => {
    const found: string[] = []
    for (const path of textFiles(folder)) {
      withoutComments(readFileSync(join(root, path), 'utf8'))
        .split('\n')
        .forEach((line, i) => {
          if (leave.test(line)) found.push(`${path}:${i + 1} ${line.trim()}`)
        })
    }
    expect(found).toEqual([])
  })

  it('the scan finds such a text when there is one', () => {
    for (const text of [
      'It is safe to leave now.',
      'You may go.',
      'You are free to go',
      'The pot can be left to cool',
      'No need to stay',
      'Leave it to simmer'
    ]) {
      expect(text).toMatch(leave)
    }
    expect("say: 'If you must leave, heat off first.'").not.toMatch(leave)
  })
})
