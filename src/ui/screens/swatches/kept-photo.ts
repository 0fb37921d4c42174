// A photo on the screen as it is kept: its picture, marks, readings and faults.
import type { SwatchEvent } from '../../../core/record/swatch.ts'
import type { Album, Shot } from './draft.ts'
import { thingsRead } from './judged.ts'
import { pixelMarks } from './marks.ts'

export function keptOf({ photo, places, read }: Shot, shape: Album['shape']): SwatchEvent[] {
  const marks = pixelMarks(shape, places, photo)
  if (marks === null || read === null) return []
  const { media, widthPx, heightPx } = photo
  const readings = thingsRead(read.undyed, read.series, read.skein)
  return [
    {
      type: 'SwatchPhotoKept',
      media,
      readWidthPx: widthPx,
      readHeightPx: heightPx,
      marks,
      readings,
      faults: read.faults
    }
  ]
}
