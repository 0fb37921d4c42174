// The first reading of a backup: all of it is proved, what it would bring is counted, and nothing is written.
import type { RawEntry } from '../../core/backup/format.ts'
import { mergedStream, mergeStream } from '../../core/backup/merge.ts'
import { namedMedia } from '../../core/backup/named-media.ts'
import { type BackupPart, readBackup } from '../../core/backup/read.ts'
import { checksumHolds } from '../../core/pot/read-entry.ts'
import { browserCodec } from '../../shell/backup/codec.ts'
import { mediaBySize, potIdOf, readStream, readSummary } from '../../shell/backup/journal-source.ts'
import { piecesOf } from '../../shell/backup/pieces.ts'
import { inOrderOfWriting } from '../../shell/journal/writing-order.ts'
import type { BatchName, LookedAt, Progress, RestorePlan } from '../../ui/backup.ts'
import { placeOf } from './kept-in.ts'
import { lineOf } from './line-of.ts'
import type { Opened } from './parts.ts'

/** The plan for the screen, and which bytes are not to be brought in. */
export type Looked =
  | { seen: Extract<LookedAt, { ok: true }>; unwanted: ReadonlySet<string> }
  | { refused: Extract<LookedAt, { ok: false }> }

type Stream = { streamId: string; entries: RawEntry[]; summary?: unknown }

export async function lookAt(parts: Opened, file: Blob, progress: Progress): Promise<Looked> {
  const view = newView(await mediaBySize(parts.connection))
  let gathered: Stream | null = null
  for await (const part of readBackup(piecesOf(file), browserCodec, (at) => progress(at / file.size))) {
    if (part.kind === 'entries' && gathered?.streamId === part.streamId) {
      gathered.entries.push(...part.entries)
      continue
    }
    if (gathered !== null) await weigh(parts, view, gathered)
    gathered = part.kind === 'entries' ? { ...part, entries: [...part.entries] } : null
    if (part.kind === 'refused') {
      const { say, instead } = part.refusal
      return { refused: { ok: false, say, instead } }
    }
    await take(parts, view, part)
  }
  const { usedBytes, roomBytes } = await parts.room()
  const left = usedBytes === null || roomBytes === null ? null : Math.max(0, roomBytes - usedBytes)
  return { seen: { ok: true, plan: { ...view.plan, roomBytes: left } }, unwanted: unwantedOf(view) }
}

type View = {
  plan: RestorePlan
  here: ReadonlyMap<string, unknown>
  standing: Set<string>
  /** Named only where it was let go, or by pots that are held back. */
  others: Set<string>
}

function newView(here: View['here']): View {
  const counts = { entries: 0, beside: 0, conflicts: 0, mended: 0, damaged: 0, photos: 0, photoBytes: 0 }
  const more = { damagedPhotos: 0, letGo: 0, texts: 0, asHere: 0, batches: 0, roomBytes: null }
  const lists = { fresh: [], grown: [], heldBack: [], elsewhere: [], branched: [] }
  const plan = { madeAtMs: 0, digest: '', ...lists, ...counts, ...more }
  return { plan, here, standing: new Set(), others: new Set() }
}

function unwantedOf({ standing, others }: View): Set<string> {
  return new Set([...others].filter((sha256) => !standing.has(sha256)))
}

/** What one stream would bring. */
async function weigh({ connection }: Opened, view: View, { streamId, entries, summary }: Stream): Promise<void> {
  const { plan } = view
  const potId = potIdOf(streamId)
  if (potId !== null) plan.batches += 1
  const [ours, here] = await Promise.all([readStream(connection, streamId), readSummary(connection, streamId)])
  const step = mergeStream(ours, entries)
  const live = (here as { live?: 1 } | undefined)?.live === 1
  const after = mergedStream(ours, step)
  const { standing, gone } = namedMedia(after)
  for (const sha256 of live ? [...standing, ...gone] : gone) view.others.add(sha256)
  if (!live) for (const sha256 of standing) view.standing.add(sha256)
  if (step.add.length + step.mend.length + step.aside.length === 0) return
  const line = lineOf(streamId, inOrderOfWriting(after), here ?? summary)
  const name = { potId: potId ?? streamId, colourway: line?.colourway ?? '', startedAtMs: line?.startedAtMs ?? 0 }
  if (live) {
    plan.heldBack.push(name)
    return
  }
  plan.entries += step.add.length
  plan.mended += step.mend.length
  plan.conflicts += step.aside.filter(({ why }) => why === 'conflict').length
  plan.damaged += step.add.filter((entry) => !checksumHolds(entry)).length
  if (potId === null) {
    plan.beside += step.add.length
    return
  }
  listed(plan, name, ours.length === 0, line)
}

function listed(plan: RestorePlan, name: BatchName, fresh: boolean, line: ReturnType<typeof lineOf>): void {
  if (fresh) plan.fresh.push(name)
  else plan.grown.push(name)
  if (line?.elsewhere) plan.elsewhere.push(name)
  if (line?.branched) plan.branched.push(name)
}

async function take({ kept }: Opened, view: View, part: BackupPart): Promise<void> {
  const { plan } = view
  if (part.kind === 'head') plan.madeAtMs = part.head.madeAtMs
  if (part.kind === 'end') plan.digest = part.digest
  if (part.kind === 'kept') {
    const merge = await placeOf(kept, part.kept)
    if (merge.kind === 'put') plan.texts += 1
    if (merge.kind === 'as-here') plan.asHere += 1
  }
  if (part.kind !== 'media' || view.here.has(part.media.sha256)) return
  const { sha256, bytes } = part.media
  if (view.others.has(sha256) && !view.standing.has(sha256)) {
    plan.letGo += 1
    return
  }
  plan.photos += 1
  plan.photoBytes += bytes.length
  if ((await browserCodec.sha256(bytes)) !== sha256) plan.damagedPhotos += 1
}
