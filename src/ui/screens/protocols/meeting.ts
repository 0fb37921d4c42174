// What a protocol that was brought in meets among those that are here. Nothing here gives way to it by itself.
import { titleKey } from '../../../core/protocol/title-key.ts'
import type { StoredProtocol } from '../../kitchen.ts'

export const TITLE_MOST = 80

export type Meeting =
  /** Nothing of its title is here. */
  | { kind: 'new' }
  /** It is here already, word for word. */
  | { kind: 'same'; as: StoredProtocol }
  /** One of its title is here, and can have versions. */
  | { kind: 'version'; as: StoredProtocol }
  /** One of its title is built in, and stays as it is. */
  | { kind: 'built-in'; as: StoredProtocol }

export function meetingOf(title: string, text: string, known: readonly StoredProtocol[]): Meeting {
  const same = known.find((each) => each.text === text)
  if (same) return { kind: 'same', as: same }
  const titled = known.filter((each) => titleKey(each.protocol.title) === titleKey(title))
  const own = titled.find(({ written }) => written) ?? titled.find(({ from }) => from === 'file')
  if (own) return { kind: 'version', as: own }
  const [builtIn] = titled
  return builtIn ? { kind: 'built-in', as: builtIn } : { kind: 'new' }
}

/** "Dip cycles, 2": the first such title that nothing has. */
export function freeTitle(title: string, known: readonly StoredProtocol[]): string {
  const taken = takenTitles(known)
  for (let n = 2; ; n++) {
    const mark = `, ${n}`
    const free = `${title.slice(0, TITLE_MOST - mark.length)}${mark}`
    if (!taken.has(titleKey(free))) return free
  }
}

/** Why nothing can be kept under that title; null: it can. */
export function titleProblem(title: string, known: readonly StoredProtocol[]): string | null {
  if (title.trim() === '') return 'Give it a title.'
  if (title.trim().length > TITLE_MOST) return `Keep the title within ${TITLE_MOST} letters.`
  return takenTitles(known).has(titleKey(title)) ? 'There is one of that title too. Choose another.' : null
}

function takenTitles(known: readonly StoredProtocol[]): Set<string> {
  return new Set(known.map(({ protocol }) => titleKey(protocol.title)))
}
