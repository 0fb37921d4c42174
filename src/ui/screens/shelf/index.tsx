// The shelf: what there is to dye with, how much of it is left, and how old it is.
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import type { KitchenShelf } from '../../shelf.ts'
import { ItemPage } from './item.tsx'
import { LabelPage } from './label.tsx'
import { ShelfList } from './list.tsx'
import { MakeStock } from './make.tsx'
import { placeOf, SHELF } from './routes.ts'
import { AddThing, ChangeThing } from './thing-form.tsx'
import { useShelf } from './use-shelf.ts'
import './style.css'

export function ShelfScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const { shelf, failed, again } = useShelf(kitchen)
  if (failed) {
    return (
      <Page title="Shelf">
        <p role="alert">The shelf could not be loaded.</p>
        <Pad onPress={again}>Try again</Pad>
      </Page>
    )
  }
  if (shelf === null) {
    return (
      <Page title="Shelf">
        <p class="soft">{kitchen.shelf ? 'Opening the shelf.' : 'There is no shelf here.'}</p>
      </Page>
    )
  }
  return <Place kitchen={kitchen} shelf={shelf} />
}

function Place({ kitchen, shelf }: { kitchen: Kitchen; shelf: KitchenShelf }): preact.JSX.Element {
  const place = placeOf(kitchen.route.value)
  switch (place.at) {
    case 'list':
      return <ShelfList kitchen={kitchen} shelf={shelf} />
    case 'add':
      return <AddThing kitchen={kitchen} shelf={shelf} />
    case 'make':
      return <MakeStock kitchen={kitchen} shelf={shelf} />
    case 'item':
    case 'change':
    case 'label': {
      const one = shelf.things.value.find(({ item }) => item.itemId === place.itemId)
      if (one === undefined) return <NoSuchThing kitchen={kitchen} />
      if (place.at === 'label') {
        return <LabelPage key={place.itemId} kitchen={kitchen} item={one.item} forPot={place.forPot} />
      }
      if (place.at === 'item') {
        return <ItemPage key={place.itemId} kitchen={kitchen} shelf={shelf} one={one} forPot={place.forPot} />
      }
      return <ChangeThing key={place.itemId} kitchen={kitchen} shelf={shelf} item={one.item} />
    }
  }
}

function NoSuchThing({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return (
    <Page title="Not on the shelf">
      <p>Nothing of that name is on this device’s shelf. Its label may come from another device.</p>
      <Pad kind="lesser" onPress={() => kitchen.go(SHELF)}>
        To the shelf
      </Pad>
    </Page>
  )
}

export default ShelfScreen
