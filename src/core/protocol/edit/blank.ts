import { scalarText } from './write.ts'

/** The smallest protocol that the reader takes, under a title: one line of text, up to 80 letters; what is longer is cut,
 * and without one it is called "New protocol". */
export function blankProtocol(title: string): string {
  const name = title.replace(/\s+/g, ' ').trim().slice(0, 80).trim() || 'New protocol'
  const plain = { json: false, eol: '\n', indent: 2, listIndent: 2, fieldsInLines: false } as const
  return `strandline: 1\ntitle: ${scalarText(name, false, plain)}\nsteps:\n  - rinse\n`
}
