// Asks the worker for pictures. What goes wrong there is told in words.
import type { Answer } from '../../core/chemistry/answer.ts'
import type { Marks, PhotoRead } from '../../core/colour/index.ts'
import type { MediaBytes, PhotoMedia } from '../../core/pot/media.ts'

const FILE_MOST_BYTES = 40_000_000

type Asking = { id: string; file: Blob } | { id: string; marks: Marks }
export type Asked = Asking & { no: number }
type Opened = { widthPx: number; heightPx: number; media: PhotoMedia; bytes: MediaBytes }
export type Told = { no: number } & ({ told: Opened | Answer<PhotoRead> } | { failed: string })

type Port = Pick<Worker, 'postMessage' | 'terminate'> & { onmessage: unknown; onerror: unknown }
type Failed = { ok: false; say: string }

export type PhotoDesk = {
  open(id: string, file: Blob & { name?: string }): Promise<{ ok: true; photo: Opened } | Failed>
  read(id: string, marks: Marks): Promise<{ ok: true; read: Answer<PhotoRead> } | Failed>
}

export function photoDesk(startWorker: () => Port = photoWorker): PhotoDesk {
  const ask = asker(startWorker)
  return {
    async open(id, file) {
      const name = file.name || 'This file'
      if (file.size === 0) return { ok: false, say: `${name} is empty. Take the photo again.` }
      if (file.size > FILE_MOST_BYTES) {
        return { ok: false, say: `${name} has ${Math.ceil(file.size / 1e6)} MB. A photo may have at most 40 MB.` }
      }
      try {
        return { ok: true, photo: (await ask({ id, file })) as Opened }
      } catch {
        const what = file.type.startsWith('image/') ? 'This browser can’t read it' : 'It is not a picture'
        return { ok: false, say: `${name} is not taken. ${what}. Choose a JPEG or PNG picture.` }
      }
    },
    async read(id, marks) {
      try {
        return { ok: true, read: (await ask({ id, marks })) as Answer<PhotoRead> }
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error)
        return { ok: false, say: `The photo can’t be read any more (${why}). Add it again.` }
      }
    }
  }
}

function asker(startWorker: () => Port): (asking: Asking) => Promise<unknown> {
  let worker: Port | null = null
  let no = 0
  const waiting = new Map<number, { done: (told: unknown) => void; failed: (why: Error) => void }>()
  const started = (): Port => {
    const port = startWorker()
    port.onmessage = ({ data }: MessageEvent<Told>) => {
      const one = waiting.get(data.no)
      waiting.delete(data.no)
      if ('told' in data) one?.done(data.told)
      else one?.failed(new Error(data.failed))
    }
    // It died, of too large a picture maybe: the next picture gets a new one.
    port.onerror = () => {
      worker = null
      for (const { failed } of waiting.values()) failed(new Error('it took too much room'))
      waiting.clear()
    }
    return port
  }
  return (asking) =>
    new Promise((done, failed) => {
      worker ??= started()
      waiting.set(++no, { done, failed })
      worker.postMessage({ ...asking, no } satisfies Asked)
    })
}

function photoWorker(): Worker {
  return new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' })
}
