// The Dye book: every pot's record, to read, to add to, to print, and to start again from.
import type { Kitchen } from '../../kitchen.ts'
import { later } from '../../parts/later.tsx'
import { severalIn } from './compare/routes.ts'
import { BookList } from './list.tsx'
import { RecordPage } from './record.tsx'
import { bookPlace } from './routes.ts'
import './style.css'

const PrintPage = later(() => import('./print/index.tsx').then((m) => ({ default: m.PrintPage })))
const DayPage = later(() => import('./print/index.tsx').then((m) => ({ default: m.DayPage })))
const ComparePage = later(() => import('./compare/index.tsx').then((m) => ({ default: m.ComparePage })))
const RepeatPage = later(() => import('./compare/repeat.tsx').then((m) => ({ default: m.RepeatPage })))

export function DyeBookScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const several = severalIn(kitchen.route.value)
  if (several?.page === 'compare') return <ComparePage kitchen={kitchen} potIds={several.potIds} />
  if (several?.page === 'repeat') return <RepeatPage kitchen={kitchen} potIds={several.potIds} />
  if (several) return <BookList kitchen={kitchen} choose={several.potIds} />
  const place = bookPlace(kitchen.route.value)
  switch (place.page) {
    case 'list':
      return <BookList kitchen={kitchen} />
    case 'record':
      return <RecordPage key={place.potId} kitchen={kitchen} potId={place.potId} />
    case 'print':
      return <PrintPage key={place.potId} kitchen={kitchen} potId={place.potId} />
    case 'day':
      return <DayPage key={place.day} kitchen={kitchen} day={place.day} />
  }
}

export { DyeBookScreen as DyeBook }
export default DyeBookScreen
