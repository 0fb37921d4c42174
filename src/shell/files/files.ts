/** The largest protocol file that is read, bytes. */
export const FILE_MOST_BYTES = 256 * 1024

export type FileRead =
  | { ok: true; text: string }
  | { ok: false; why: 'too-large' | 'not-text' | 'unreadable'; say: string }

/** Reads a text file the dyer chose. Refuses one that is too large before reading it, and one that is not UTF-8 text. */
export async function readTextFile(file: Blob & { name?: string }): Promise<FileRead> {
  const name = file.name ?? 'This file'
  if (file.size > FILE_MOST_BYTES) {
    const kB = Math.ceil(file.size / 1024)
    return { ok: false, why: 'too-large', say: `${name} has ${kB} kB. A protocol has at most 256 kB.` }
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer())
    return { ok: true, text }
  } catch (error) {
    if (error instanceof TypeError) return { ok: false, why: 'not-text', say: `${name} is not a text file in UTF-8.` }
    return { ok: false, why: 'unreadable', say: `${name} can't be read. Choose it again.` }
  }
}

/** Hands a text to the dyer as a file. */
export function saveTextFile(name: string, mime: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: mime }))
  const link = document.createElement('a')
  link.href = url
  link.download = safeName(name)
  link.click()
  // The download has to have begun before the address goes away.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

/** A file name that every system takes: what the dyer called the batch may hold any sign. */
export function safeName(name: string): string {
  const safe = [...name].map((sign) => (sign < ' ' || '\\/:*?"<>|'.includes(sign) ? '-' : sign)).join('')
  return safe.trim().slice(0, 120) || 'strandline'
}
