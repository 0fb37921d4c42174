// What the screens are given for swatches.
import type { Answer } from '../core/chemistry/answer.ts'
import type { Marks, PhotoRead } from '../core/colour/index.ts'
import type { MediaBytes, PhotoMedia } from '../core/pot/media.ts'
import type { SwatchesRead } from '../core/record/export-record.ts'
import type { Comparison, Judgement, SwatchEvent } from '../core/record/swatch.ts'
import type { KeptReading } from '../core/record/swatch-readings.ts'
import type { Sent } from './kitchen.ts'

/** A picture as it is read, and the smaller one that is shown and kept. */
export type OpenedPhoto = { widthPx: number; heightPx: number; media: PhotoMedia; bytes: MediaBytes }

/** Reads pictures beside the page. */
export type SwatchPhotos = {
  /** `id`: the picture is called by it from then on. */
  open(
    id: string,
    file: Blob & { name?: string }
  ): Promise<{ ok: true; photo: OpenedPhoto } | { ok: false; say: string }>
  read(id: string, marks: Marks): Promise<{ ok: true; read: Answer<PhotoRead> } | { ok: false; say: string }>
}

/** `readings`: those that another skein can be held against. `read`: the entries that all of it comes of. */
export type KeptSwatches = {
  judgements: Judgement[]
  comparisons: Comparison[]
  readings: KeptReading[]
  read: SwatchesRead
  problem: string | null
}

export type KitchenSwatches = {
  photos: SwatchPhotos
  /** `batchId` null: of a skein of no batch. `commandId`: one for all tries of the same deed. */
  keep(batchId: string | null, events: SwatchEvent[], media: MediaBytes[], commandId: string): Promise<Sent>
  /** Of a batch; null: all there are. */
  kept(batchId: string | null): Promise<KeptSwatches>
}
