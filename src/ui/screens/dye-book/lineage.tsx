// Where the yarn and the bath of a batch came from, and where they went on.
import { useEffect, useState } from 'preact/hooks'
import type { Found } from '../../../core/record/find.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import type { BookLine, Kitchen } from '../../kitchen.ts'

/** So many of the newest batches are looked through for what went on from this one, beyond those looked through before. */
const NEWEST = 40

type Kin = { say: string; potId: string; name: string }

export function Lineage({ kitchen, record }: { kitchen: Kitchen; record: BatchRecord }): preact.JSX.Element | null {
  const [kin, setKin] = useState<Kin[]>([])
  const { potId } = record.identity
  useEffect(() => {
    let here = true
    Promise.all([parentsOf(kitchen, record), childrenOf(kitchen, potId)]).then(
      ([parents, children]) => here && setKin([...parents, ...children]),
      // What can't be read is no reason to show no record; the batch itself still names its parents in the export.
      () => here && setKin([])
    )
    return () => {
      here = false
    }
  }, [kitchen, record])
  if (kin.length === 0) return null
  return (
    <ul class="book-lineage" aria-label="Before and after">
      {kin.map(({ say, potId: id, name }) => (
        <li key={`${say} ${id}`}>
          {`${say} `}
          <a href={`#/dye-book/${encodeURIComponent(id)}`}>{name}</a>
        </li>
      ))}
    </ul>
  )
}

async function parentsOf(kitchen: Kitchen, { substrate }: BatchRecord): Promise<Kin[]> {
  const named = async (say: string, id: string | null): Promise<Kin[]> => {
    if (id === null) return []
    const { entries } = await kitchen.entries(id)
    const start = entries.find(({ event }) => event.type === 'PotStarted')?.event
    const name = start?.type === 'PotStarted' ? start.pot.batchName : 'a batch that is not in this book'
    return [{ say, potId: id, name }]
  }
  const yarn = await named('Its yarn was dyed before as', substrate.parentBatchId)
  return [...yarn, ...(await named('Its bath went on from', substrate.bath.parentBatchId))]
}

async function childrenOf(kitchen: Kitchen, potId: string): Promise<Kin[]> {
  const found = await kitchen.found?.()
  if (!found) return []
  const kept = await found.kept()
  const newest = await kitchen.book(0, Number.MAX_SAFE_INTEGER, NEWEST)
  const unread = newest.filter((line) => kept.get(line.potId)?.entries !== line.entries)
  await found.lookThrough(unread, (more) => {
    for (const each of more) kept.set(each.potId, each)
    return true
  })
  const of = (key: 'yarnOf' | 'bathOf'): Found[] => [...kept.values()].filter((each) => each[key] === potId)
  const yarn = of('yarnOf')
  const bath = of('bathOf')
  if (yarn.length + bath.length === 0) return []
  const lines = new Map((await kitchen.book(0, Number.MAX_SAFE_INTEGER)).map((line) => [line.potId, line]))
  return [...kinOf('Its yarn was dyed over as', yarn, lines), ...kinOf('Its bath went on as', bath, lines)]
}

function kinOf(say: string, found: readonly Found[], lines: ReadonlyMap<string, BookLine>): Kin[] {
  return found.flatMap(({ potId }) => {
    const line = lines.get(potId)
    return line ? [{ say, potId, name: line.batchName }] : []
  })
}
