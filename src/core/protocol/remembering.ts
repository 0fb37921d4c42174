/** More than one protocol holds; hostile or generated text must not fill the memory. */
const REMEMBERED_MOST = 2_000

/** The same function of a text, with what it gave kept for the next time. Only for one that gives the same for the same
 * text, and whose answer nobody changes. */
export function remembering<T>(read: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>()
  return (text) => {
    const before = known.get(text)
    if (before !== undefined) return before
    const found = read(text)
    if (known.size >= REMEMBERED_MOST) known.clear()
    known.set(text, found)
    return found
  }
}
