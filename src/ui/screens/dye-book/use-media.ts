import { useEffect, useState } from 'preact/hooks'
import type { MediaRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { useBlobAddress } from '../../parts/blob-address.ts'

/** The bytes as an address for the browser, or why there is none. */
export function useMedia(kitchen: Kitchen, media: MediaRecord): { address: string | null; problem: string | null } {
  const [blob, setBlob] = useState<Blob | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const { sha256 } = media
  const gone = media.trimmed !== null
  useEffect(() => {
    let here = true
    const failed = (why: string): void => {
      if (here) setProblem(why)
    }
    setBlob(null)
    setProblem(null)
    if (gone) return
    kitchen.media?.read(sha256).then(
      (found) => (found.ok ? here && setBlob(found.blob) : failed(found.say)),
      (error: unknown) => failed(`It can’t be read (${error instanceof Error ? error.message : String(error)}).`)
    )
    return () => {
      here = false
    }
  }, [kitchen, sha256, gone])
  return { address: useBlobAddress(blob ? sha256 : '', () => blob), problem }
}

export function seconds({ lengthMs }: MediaRecord): string {
  return `${Math.max(1, Math.round((lengthMs ?? 0) / 1000))} s`
}
