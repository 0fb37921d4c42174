import type { KeptThing } from '../../core/backup/format.ts'
import { type KeptMerge, mergeKept } from '../../core/backup/merge-kept.ts'
import type { Kept } from '../../shell/settings/kept.ts'

/** What is to become of a small kept thing here. What came in before under a name beside its own is there already. */
export async function placeOf(kept: Kept, thing: KeptThing): Promise<KeptMerge> {
  const merge = mergeKept(await kept.get(thing.key), thing)
  if (merge.kind !== 'put' || merge.key === thing.key) return merge
  return (await kept.get(merge.key)) === undefined ? merge : { kind: 'same' }
}

/** Puts each in its place; how many were new. Doing it again does nothing. */
export async function putKept(kept: Kept, things: readonly KeptThing[]): Promise<number> {
  let fresh = 0
  for (const thing of things) {
    const merge = await placeOf(kept, thing)
    if (merge.kind !== 'put') continue
    await kept.set(merge.key, merge.value)
    fresh += 1
  }
  return fresh
}
