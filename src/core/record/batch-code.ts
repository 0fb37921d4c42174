// What the code on a tag holds: a word of our own, a kind and an id. No web address: a phone's own camera opens nothing.

const BATCH = 'strandline:batch/'

/** "strandline:batch/0b5c…": what is printed as a QR code, and beneath the record in letters. */
export function batchCode(potId: string): string {
  return BATCH + potId
}

export type CodeRead =
  | { kind: 'batch'; potId: string }
  /** One of our codes, but of something else: `what` it is, as written. */
  | { kind: 'other'; what: string }
  | { kind: 'none' }

const bareId = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i

/** Reads a code that was scanned, pasted or typed; an id alone is one too. What a scanner puts around it (spaces, a line
 * end, capitals in the word of ours) does not matter. */
export function readCode(text: string): CodeRead {
  const said = text.trim()
  if (bareId.test(said)) return { kind: 'batch', potId: said.toLowerCase() }
  const parts = /^strandline:([a-z-]+)\/(\S+)$/i.exec(said)
  if (!parts) return { kind: 'none' }
  const [, what = '', id = ''] = parts
  if (what.toLowerCase() !== 'batch') return { kind: 'other', what: what.toLowerCase() }
  return { kind: 'batch', potId: bareId.test(id) ? id.toLowerCase() : id }
}
