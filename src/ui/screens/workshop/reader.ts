// Gives the rows and problems of a text: at once where that is quick here, else from a worker, of the latest text asked
// for. What is quick is measured: a text that a desk reads between two frames may take a phone ten.
import { type Outline, outlineOf } from '../../../core/protocol/edit/rows.ts'

/** `tookMs`: to be read. */
export type Read = { text: string; outline: Outline; tookMs: number }

/** What the page may give to reading a letter: the rest of a frame of 16 ms is for drawing it. */
export const AT_ONCE_MS = 12
/** So many readings are looked at, by the middle one: a moment in which the machine did something else says nothing. */
const LOOKED_AT = 3
/** Before anything was measured: what a slow phone reads in a tenth of a second. */
export const AT_ONCE_LETTERS = 4_000

export type Reader = {
  /** What is read at once is given back. Null: `done` will be told, maybe of an older text first. */
  read(text: string, done: (read: Read) => void): Read | null
  close(): void
}

type Port = Pick<Worker, 'postMessage' | 'terminate'> & { onmessage: unknown; onerror: unknown }

export function readTimed(text: string): Read {
  const beganMs = performance.now()
  const outline = outlineOf(text)
  return { text, outline, tookMs: performance.now() - beganMs }
}

export function reader(startWorker: () => Port = readingWorker, readHere: (text: string) => Read = readTimed): Reader {
  let worker: Port | null = null
  let failed = false
  let busy = false
  let next: string | null = null
  let lastMs: number[] = []
  let tell: (read: Read) => void = () => {}

  const note = (tookMs: number): void => {
    lastMs = [...lastMs, tookMs].slice(-LOOKED_AT)
  }
  const here = (text: string): Read => {
    const read = readHere(text)
    note(read.tookMs)
    return read
  }
  // Without a worker the page reads by itself: late is better than never.
  const giveUp = (text: string): void => {
    failed = true
    busy = false
    worker?.terminate()
    tell(here(next ?? text))
    next = null
  }
  const ask = (text: string): void => {
    if (busy) {
      next = text
      return
    }
    busy = true
    try {
      worker ??= startWorker()
      worker.onmessage = ({ data }: MessageEvent<Read>) => {
        busy = false
        note(data.tookMs)
        tell(data)
        const later = next
        next = null
        if (later !== null && later !== data.text) ask(later)
      }
      worker.onerror = () => giveUp(text)
      worker.postMessage(text)
    } catch {
      giveUp(text)
    }
  }
  const isQuick = (text: string): boolean => {
    const middle = lastMs.toSorted((a, b) => a - b)[lastMs.length >> 1]
    return middle === undefined ? text.length <= AT_ONCE_LETTERS : middle <= AT_ONCE_MS
  }
  return {
    read(text, done) {
      tell = done
      // An answer that is still to come would be of an older text.
      if (failed || (!busy && isQuick(text))) return here(text)
      ask(text)
      return null
    },
    close() {
      tell = () => {}
      worker?.terminate()
      worker = null
    }
  }
}

function readingWorker(): Worker {
  return new Worker(new URL('./reading-worker.ts', import.meta.url), { type: 'module' })
}
