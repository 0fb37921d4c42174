// Where a backup is written to, piece by piece. Best is a file that the dyer chose, which the browser writes as it comes.
// Without that a file of the site's own takes the pieces, which is then handed to the downloads; it takes its room twice
// until then. Without that too, the pieces are gathered in blobs, which most browsers lay out on the disk.

export type Sink = {
  write(piece: Uint8Array): Promise<void>
  /** The whole file, to be read once more. */
  close(): Promise<Blob>
  /** Hands it over; a chosen file is where it should be already. */
  handOver(): void
  /** Takes back what was written. */
  drop(): Promise<void>
  where: 'chosen' | 'downloads'
}

/** Pieces are gathered to this before they are written: a write has its price. */
const GATHER = 4 * 1024 * 1024
const PART = 'backup.part'
/** A download that is still being copied out of it needs it; after that it only takes room. */
const PART_KEPT_MS = 60 * 60_000

type Picker = (options: { suggestedName: string }) => Promise<FileSystemFileHandle>

/** Inside a tap. Null: the dyer chose none. */
export async function openSink(name: string): Promise<Sink | null> {
  const picker = (globalThis as { showSaveFilePicker?: Picker }).showSaveFilePicker
  if (picker !== undefined) {
    try {
      return await intoHandle(await picker({ suggestedName: name }), name)
    } catch (error) {
      if ((error as DOMException).name === 'AbortError') return null
      // A picker that may not be shown, as in a frame, is like none.
    }
  }
  try {
    const room = await navigator.storage.getDirectory()
    await room.removeEntry(PART).catch(() => {})
    const handle = await room.getFileHandle(PART, { create: true })
    return await intoHandle(handle, name, () => room.removeEntry(PART))
  } catch {
    return intoBlobs(name)
  }
}

/** Lets go what a download of an earlier visit took its bytes from. */
export async function sweepPart(nowMs: number): Promise<void> {
  try {
    const room = await navigator.storage.getDirectory()
    const part = await (await room.getFileHandle(PART)).getFile()
    if (nowMs - part.lastModified > PART_KEPT_MS) await room.removeEntry(PART)
  } catch {
    // There was none, or the browser has no such room.
  }
}

async function intoHandle(handle: FileSystemFileHandle, name: string, remove?: () => Promise<void>): Promise<Sink> {
  // Written beside and put in place when it is closed: one that breaks off leaves no half file.
  const writable = await handle.createWritable()
  const gathered = gathering(async (pieces) => writable.write(new Blob(pieces)))
  let whole: Blob | null = null
  return {
    write: gathered.write,
    async close() {
      await gathered.flush()
      await writable.close()
      whole = await handle.getFile()
      return whole
    },
    handOver() {
      if (remove !== undefined && whole !== null) download(whole, name)
    },
    async drop() {
      await writable.abort().catch(() => {})
      await remove?.().catch(() => {})
    },
    where: remove === undefined ? 'chosen' : 'downloads'
  }
}

function intoBlobs(name: string): Sink {
  const parts: Blob[] = []
  const gathered = gathering(async (pieces) => void parts.push(new Blob(pieces)))
  return {
    write: gathered.write,
    async close() {
      await gathered.flush()
      return new Blob(parts)
    },
    handOver: () => download(new Blob(parts), name),
    async drop() {
      parts.length = 0
    },
    where: 'downloads'
  }
}

function gathering(put: (pieces: BlobPart[]) => Promise<void>) {
  let pieces: BlobPart[] = []
  let bytes = 0
  const flush = async (): Promise<void> => {
    const ready = pieces
    pieces = []
    bytes = 0
    if (ready.length > 0) await put(ready)
  }
  const write = async (piece: Uint8Array): Promise<void> => {
    pieces.push(piece as Uint8Array<ArrayBuffer>)
    bytes += piece.length
    if (bytes >= GATHER) await flush()
  }
  return { write, flush }
}

function download(whole: Blob, name: string): void {
  const url = URL.createObjectURL(whole)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // A large file is still being copied long after the click.
  setTimeout(() => URL.revokeObjectURL(url), PART_KEPT_MS)
}
