import type { Kitchen } from '../../kitchen.ts'
import { potFor } from '../../parts/new-stock.ts'
import { Pad } from '../../parts/pad.tsx'
import { SHELF } from './routes.ts'

/** To the shelf; to the pot on its form where it waits for something of the shelf. `forPot`: what it is started by. */
export function WayBack({ kitchen, forPot }: { kitchen: Kitchen; forPot: string | null }): preact.JSX.Element {
  if (forPot === null) return <Pad onPress={() => kitchen.go(SHELF)}>Shelf</Pad>
  return <Pad onPress={() => kitchen.go(`#/start/${encodeURIComponent(forPot)}`)}>{`Back to ${potFor(forPot)}`}</Pad>
}
