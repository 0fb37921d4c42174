// A large backup written and read as a stream, in a process of its own: how much memory that takes beside how large the
// file is. The entries and pictures are made up as they are wanted, so that nothing but the backup itself is in memory.
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Figure } from './figure.ts'

const MB = 1_000_000
const SIZE_MB = 200
/** A reader that kept the file would be over 1. A bare stream of the same bytes through a hash takes some too. */
const MOST = 0.5

type Told = {
  bytes: number
  peakBytes: number
  bareBytes: number
  wroteMs: number
  readMs: number
  bareMs: number
  end: string
}

export async function backupMemory(): Promise<Figure> {
  const sizeMB = sizeAsked() ?? SIZE_MB
  const folder = mkdtempSync(join(tmpdir(), 'strandline-bench-backup-'))
  try {
    const { bytes, peakBytes, bareBytes, wroteMs, readMs, bareMs, end } = await inOwnProcess(
      join(folder, 'file'),
      sizeMB
    )
    const share = (peakBytes / bytes).toFixed(3)
    return {
      what: `A backup of ${(bytes / MB).toFixed(0)} MB written, then read and proved`,
      found: `${(peakBytes / MB).toFixed(0)} MB more memory at most (${share} of its size; the same bytes read bare ${(bareBytes / MB).toFixed(0)} MB); written in ${seconds(wroteMs)}, read in ${seconds(readMs)}, bare read and hash ${seconds(bareMs)}; it ends in "${end}"`,
      goal: `under ${MOST} of its size, and under 200 MB whatever its size`,
      met: end === 'end' && peakBytes < MOST * bytes && peakBytes < 200 * MB
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** `--gb 2` */
function sizeAsked(): number | null {
  const at = process.argv.indexOf('--gb')
  const gb = at < 0 ? Number.NaN : Number(process.argv[at + 1])
  return gb > 0 ? gb * 1000 : null
}

function inOwnProcess(path: string, sizeMB: number): Promise<Told> {
  const script = fileURLToPath(new URL('./backup-process.ts', import.meta.url))
  return new Promise((told, failed) => {
    const child = spawn(process.execPath, ['--import', 'tsx', script, path, String(sizeMB)], {
      stdio: ['ignore', 'pipe', 'inherit']
    })
    let said = ''
    child.stdout.on('data', (piece) => {
      said += piece
    })
    child.once('error', failed)
    child.once('exit', (code) => (code === 0 ? told(JSON.parse(said)) : failed(new Error(`it ended with ${code}`))))
  })
}

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(1)} s`
}
