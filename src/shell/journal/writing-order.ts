type Placed = {
  streamId: string
  writerId: string
  seq: number
  after: { writerId: string; seq: number } | null
  recordedAtMs?: number
}

/** Puts the entries of a stream, given by key, in the order of writing; of several streams, each by itself. One writer's own order is its count; where a
 * restored or copied store went on writing, an entry comes after the one it names. */
export function inOrderOfWriting(byKey: unknown[]): unknown[] {
  const placed = byKey as Placed[]
  if (placed.every((entry) => entry.writerId === placed[0]?.writerId)) return byKey
  const queues = new Map<string, Placed[]>()
  for (const entry of placed) {
    const by = `${entry.streamId} ${entry.writerId}`
    queues.set(by, [...(queues.get(by) ?? []), entry])
  }
  const written = new Set<string>()
  const order: Placed[] = []
  while (order.length < placed.length) {
    const heads = [...queues.values()].map((queue) => queue[0]).filter((head) => head !== undefined)
    const ready = heads.filter(
      (head) => head.after === null || written.has(keyOf({ ...head.after, streamId: head.streamId }))
    )
    // An entry that names one which is not there still has its place: by the time it was written.
    const next = (ready.length > 0 ? ready : heads).sort((a, b) => (a.recordedAtMs ?? 0) - (b.recordedAtMs ?? 0))[0]
    if (next === undefined) break
    queues.get(`${next.streamId} ${next.writerId}`)?.shift()
    written.add(keyOf(next))
    order.push(next)
  }
  return order
}

const keyOf = ({ streamId, writerId, seq }: Omit<Placed, 'after'>): string => `${streamId} ${writerId} ${seq}`
