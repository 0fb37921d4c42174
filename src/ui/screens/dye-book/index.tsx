// The Dye book: every pot's record, to read, to add to, and to start again from.
import type { Kitchen } from '../../kitchen.ts'
import { BookList } from './list.tsx'
import { RecordPage } from './record.tsx'
import './style.css'

export function DyeBookScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const id = /^#?\/dye-book\/(.+)$/.exec(kitchen.route.value)?.[1]
  if (id === undefined) return <BookList kitchen={kitchen} />
  return <RecordPage key={id} kitchen={kitchen} potId={decoded(id)} />
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id)
  } catch {
    // A broken address names no pot; the page says that there is no such record.
    return id
  }
}

export { DyeBookScreen as DyeBook }
export default DyeBookScreen
