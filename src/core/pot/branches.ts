// The same batch continued on two devices: two entries follow the same one, and from there the journal has two branches.
// A pot can't have gone both ways, so its state is folded along one of them, the same one on every device: the trunk.
import type { Entry } from './entry.ts'
import type { PotEvent } from './events.ts'

type PotEntry = Entry<PotEvent>
/** `next`: those that follow. `goes`: it or one of those behind it carries the pot on. */
type Node = { entry: PotEntry | null; next: Node[]; goes: boolean }

/** `entries`: the trunk in the order given, with the notes of branches that do nothing but tell of the pot. `head`: the
 * entry that the next one follows. `sides`: the other branches, each its own entries only, with the one it leaves from. */
export type Trunk = {
  entries: readonly PotEntry[]
  head: PotEntry | undefined
  sides: { from: PotEntry | null; entries: PotEntry[] }[]
}

/** What only tells of a pot fits whichever way it went. */
const telling = /^(NoteWritten|PhotoNoted|VoiceNoted|MediaTrimmed|Corrected)$/

/** At each parting the trunk goes where the pot was carried on first. `entries`: in the order of writing. */
export function trunkOf(entries: readonly PotEntry[]): Trunk {
  const whole: Trunk = { entries, head: entries.at(-1), sides: [] }
  if (entries.every(({ writerId }) => writerId === entries[0]?.writerId)) return whole
  const left = new Set<PotEntry>()
  let at: Node = rootOf(entries)
  while (at.next.length > 0) {
    const [way, ...others] = at.next.sort((a, b) => Number(b.goes) - Number(a.goes) || earlier(a.entry, b.entry))
    for (const other of others.filter(({ goes }) => goes)) {
      const own = behind(other)
      for (const entry of own) left.add(entry)
      whole.sides.push({ from: at.entry, entries: entries.filter((entry) => own.has(entry)) })
    }
    at = way as Node
  }
  const stay = left.size === 0 ? entries : entries.filter((entry) => !left.has(entry))
  return { ...whole, entries: stay, head: at.entry ?? undefined }
}

/** What names an entry that can't be read follows its own writer's last one. */
function rootOf(entries: readonly PotEntry[]): Node {
  const root: Node = { entry: null, next: [], goes: true }
  const known = new Map<string, Node>()
  const nodes = entries.map((entry): Node => {
    const { writerId, seq, after, event } = entry
    const before = after && (known.get(`${after.writerId} ${after.seq}`) ?? known.get(writerId))
    const node = { entry, next: [], goes: !telling.test(event.type) }
    ;(before ?? root).next.push(node)
    known.set(`${writerId} ${seq}`, node).set(writerId, node)
    return node
  })
  for (const node of nodes.reverse()) node.goes ||= node.next.some(({ goes }) => goes)
  return root
}

function earlier(a: PotEntry | null, b: PotEntry | null): number {
  if (a === null || b === null) return 0
  return a.recordedAtMs - b.recordedAtMs || (a.writerId < b.writerId ? -1 : 1)
}

function behind(node: Node): Set<PotEntry> {
  const found = new Set<PotEntry>()
  const walk = [node]
  for (let one = walk.pop(); one !== undefined; one = walk.pop()) {
    if (one.entry !== null) found.add(one.entry)
    walk.push(...one.next)
  }
  return found
}
