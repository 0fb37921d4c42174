type Placed = { writerId: string; seq: number; after: { writerId: string; seq: number } | null; recordedAtMs?: number }

/** Puts the entries of one stream, given by key, in the order of writing. One writer's own order is its count; where a
 * restored or copied store went on writing, an entry comes after the one it names. */
export function inOrderOfWriting(byKey: unknown[]): unknown[] {
  const placed = byKey as Placed[]
  if (placed.every((entry) => entry.writerId === placed[0]?.writerId)) return byKey
  const queues = new Map<string, Placed[]>()
  for (const entry of placed) queues.set(entry.writerId, [...(queues.get(entry.writerId) ?? []), entry])
  const written = new Set<string>()
  const order: Placed[] = []
  while (order.length < placed.length) {
    const heads = [...queues.values()].map((queue) => queue[0]).filter((head) => head !== undefined)
    const ready = heads.filter((head) => head.after === null || written.has(`${head.after.writerId} ${head.after.seq}`))
    // An entry that names one which is not there still has its place: by the time it was written.
    const next = (ready.length > 0 ? ready : heads).sort((a, b) => (a.recordedAtMs ?? 0) - (b.recordedAtMs ?? 0))[0]
    if (next === undefined) break
    queues.get(next.writerId)?.shift()
    written.add(`${next.writerId} ${next.seq}`)
    order.push(next)
  }
  return order
}

/** The entries of several streams, each stream apart and in the order of writing. */
export function byStream(entries: unknown[]): unknown[][] {
  const streams = new Map<string, unknown[]>()
  for (const entry of entries) {
    const { streamId } = entry as { streamId: string }
    streams.set(streamId, [...(streams.get(streamId) ?? []), entry])
  }
  return [...streams.values()].map(inOrderOfWriting)
}
