// Gives the rows and problems of a text: at once where that is quick, else from a worker, of the latest text asked for.
import { type Outline, outlineOf } from '../../../core/protocol/edit/rows.ts'

export type Read = { text: string; outline: Outline }

/** Longer texts than this are read beside the page: about what takes a slow phone a tenth of a second. */
export const AT_ONCE_MOST = 4_000

export type Reader = {
  /** `done` may be told of an older text than the latest; what it is of stands beside it. */
  read(text: string, done: (read: Read) => void): void
  close(): void
}

type Port = Pick<Worker, 'postMessage' | 'terminate'> & { onmessage: unknown; onerror: unknown }

export function reader(startWorker: () => Port = readingWorker): Reader {
  let worker: Port | null = null
  let failed = false
  let busy = false
  let next: string | null = null
  let tell: (read: Read) => void = () => {}

  const here = (text: string): void => tell({ text, outline: outlineOf(text) })
  // Without a worker the page reads by itself: late is better than never.
  const giveUp = (text: string): void => {
    failed = true
    busy = false
    worker?.terminate()
    here(next ?? text)
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
  return {
    read(text, done) {
      tell = done
      if (failed || text.length <= AT_ONCE_MOST) here(text)
      else ask(text)
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
