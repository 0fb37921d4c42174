// A text from anywhere, read as hostile: never more of it than a protocol may have, and only as plain text.
import { shownName, strangeEnding } from '../../core/protocol/file-name.ts'
import { bytesMost } from '../../core/protocol/source/limits.ts'

export type FileRead =
  | { ok: true; text: string }
  | {
      ok: false
      why: 'too-large' | 'utf-16' | 'not-text' | 'not-utf-8' | 'unreadable'
      line: number
      say: string
      instead: string
    }

type Refused = Extract<FileRead, { ok: false }>

/** What is looked at to tell UTF-16 without its mark from other bytes. */
const LOOKED_AT_BYTES = 4_096

/** Refuses a file that is too large before anything of it is read, and one that is no text in UTF-8. A byte order mark
 * is left out, and lines end in \n: neither is what somebody wrote, and the same text is then the same everywhere. */
export async function readTextFile(file: Blob & { name?: string }): Promise<FileRead> {
  const name = shownName(file.name ?? 'This file')
  if (file.size > bytesMost) return tooLarge(name, file.size)
  let bytes: Uint8Array<ArrayBuffer>
  try {
    // A file can grow between the look at its size and this.
    bytes = new Uint8Array(await file.slice(0, bytesMost).arrayBuffer())
  } catch {
    // So does a folder that was dropped.
    return refused('unreadable', 1, `${name} can’t be read.`, 'Choose it again: a file, not a folder.')
  }
  return textIn(bytes, name)
}

function textIn(bytes: Uint8Array<ArrayBuffer>, name: string): FileRead {
  if (isUtf16(bytes)) {
    const instead = 'Save it as UTF-8: in most editors under Save as, Encoding.'
    return refused('utf-16', 1, `${name} is written in UTF-16.`, instead)
  }
  if (bytes.includes(0)) {
    const ending = strangeEnding(name)
    const called = ending === null ? '' : ` Its name ends in ${ending}.`
    const say = `${name} is no text: a picture, a packed file or a word processor’s document.${called}`
    return refused('not-text', 1, say, 'Choose a protocol saved as plain text (.yaml).')
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return { ok: true, text: text.replace(/\r\n?/g, '\n') }
  } catch {
    return notUtf8(bytes, name)
  }
}

/** Its mark, or every other byte empty, as plain letters have it there. */
function isUtf16(bytes: Uint8Array): boolean {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return true
  const looked = bytes.subarray(0, LOOKED_AT_BYTES)
  const half = looked.length / 2
  let even = 0
  let odd = 0
  for (const [i, byte] of looked.entries()) {
    if (byte !== 0) continue
    if (i % 2 === 0) even++
    else odd++
  }
  return half >= 4 && Math.max(even, odd) > half * 0.7 && Math.min(even, odd) < half * 0.1
}

function tooLarge(name: string, size: number): Refused {
  const kB = Math.ceil(size / 1024)
  const say = `${name} has ${kB} kB. A protocol has at most ${bytesMost / 1024} kB.`
  return refused('too-large', 1, say, 'Cut it, or make two protocols of it.')
}

/** Most often a ° from an editor that writes another encoding: the line of it is what helps. */
function notUtf8(bytes: Uint8Array<ArrayBuffer>, name: string): Refused {
  const before = new TextDecoder().decode(bytes).split('\uFFFD', 1)[0] ?? ''
  const line = before.split(/\r\n?|\n/).length
  const say = `${name} has a letter in line ${line} that is not in UTF-8, perhaps a °.`
  return refused('not-utf-8', line, say, 'Save it as UTF-8: in most editors under Save as, Encoding.')
}

function refused(why: Refused['why'], line: number, say: string, instead: string): Refused {
  return { ok: false, why, line, say, instead }
}
