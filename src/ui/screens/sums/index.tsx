// Bench sums: the arithmetic of the bench, without a pot.
import type { Kitchen } from '../../kitchen.ts'
import { List } from './list.tsx'
import { One } from './one.tsx'
import { sums } from './sums.ts'
import './style.css'

export default function Sums({
  kitchen
}: {
  kitchen: Pick<Kitchen, 'route' | 'settings' | 'sharing'>
}): preact.JSX.Element {
  const id = kitchen.route.value.split('/')[3]
  const sum = sums.find((each) => each.id === id)
  return sum ? <One key={sum.id} kitchen={kitchen} sum={sum} /> : <List unknown={id} />
}
