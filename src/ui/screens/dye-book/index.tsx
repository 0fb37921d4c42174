// The Dye book: every pot's record, to read, to add to, and to start again from.
import type { Kitchen } from '../../kitchen.ts'
import { later } from '../../parts/later.tsx'
import { severalIn } from './compare/routes.ts'
import { BookList } from './list.tsx'
import { RecordPage } from './record.tsx'
import './style.css'

const ComparePage = later(() => import('./compare/index.tsx').then((m) => ({ default: m.ComparePage })))
const RepeatPage = later(() => import('./compare/repeat.tsx').then((m) => ({ default: m.RepeatPage })))

export function DyeBookScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const several = severalIn(kitchen.route.value)
  if (several?.page === 'compare') return <ComparePage kitchen={kitchen} potIds={several.potIds} />
  if (several?.page === 'repeat') return <RepeatPage kitchen={kitchen} potIds={several.potIds} />
  if (several) return <BookList kitchen={kitchen} choose={several.potIds} />
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
