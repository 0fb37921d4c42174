// Making a stock, guided: what it is to be, then one act after the other with its cautions, then its label.
import { useRef, useState } from 'preact/hooks'
import { actsOf, type StockPlan } from '../../../core/shelf/make.ts'
import type { Stock } from '../../../core/shelf/thing.ts'
import type { Kitchen } from '../../kitchen.ts'
import { chooseMade, madeFor, potFor, type StockFor, shortBottle } from '../../parts/new-stock.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import type { KitchenShelf } from '../../shelf.ts'
import { MakeActs } from './make-acts.tsx'
import { emptyWish, MakeForm, wishLike } from './make-form.tsx'
import { readWish, type Wish } from './read-wish.ts'
import { labelRoute } from './routes.ts'
import { useForm } from './thing-form.tsx'
import { WayBack } from './way-back.tsx'
import { amountWords } from './words.ts'

type Ready = { thing: Stock; plan: StockPlan }

export function MakeStock({ kitchen, shelf }: { kitchen: Kitchen; shelf: KitchenShelf }): preact.JSX.Element {
  const forPot = useRef(madeFor(kitchen.route.peek())).current
  const [wish, setWish] = useState(() => firstWish(shelf, forPot))
  const [ready, setReady] = useState<Ready | null>(null)
  const itemId = useRef(kitchen.newId()).current
  const units = unitsOf(kitchen.settings.value)
  const stocks = shelf.things.value.filter(({ item }) => item.status === 'here' && item.thing.kind === 'stock')
  const read = () => readWish(wish, stocks, units, kitchen.now.peek())
  const asked = useForm(kitchen, read)
  const made = useForm(kitchen, read)
  const workOut = (): Promise<void> =>
    asked.send(
      async ({ thing, plan }) => {
        setReady({ thing, plan })
        return { ok: true }
      },
      () => scrollTo(0, 0)
    )
  if (ready === null) {
    return (
      <Page title="Make a stock" actions={<WayBack kitchen={kitchen} forPot={forPot?.protocolId ?? null} />}>
        {forPot ? (
          <p>{`For ${potFor(forPot.protocolId)}: ${amountWords(forPot.shortML, 'mL', units)} are short.`}</p>
        ) : null}
        <MakeForm wish={wish} change={setWish} stocks={stocks} problems={asked.problems} units={units} />
        <Pad kind="lesser" look="solid" onPress={workOut}>
          Work it out
        </Pad>
      </Page>
    )
  }
  const { thing, plan } = ready
  const finish = (): Promise<void> =>
    made.send(
      () => shelf.send(itemId, { type: 'MakeStock', thing, making: plan.making }, { commandId: made.commandId }),
      (go) => {
        if (forPot) chooseMade(forPot, itemId)
        go(labelRoute(itemId, forPot?.protocolId))
      }
    )
  return (
    <MakeActs
      name={thing.name}
      acts={actsOf(plan.making, thing.dye)}
      making={plan.making}
      percentWV={plan.percentWV}
      stocks={stocks}
      units={units}
      failed={made.failed}
      busy={made.busy}
      change={() => setReady(null)}
      finish={finish}
    />
  )
}

/** What is known of the stock that is short stands there already. */
function firstWish(shelf: KitchenShelf, forPot: StockFor | null): Wish {
  if (forPot === null) return emptyWish
  const short = shortBottle(forPot)
  const like = shelf.things.peek().find(({ item }) => item.itemId === short)
  return like ? wishLike(like.item, forPot.shortML) : emptyWish
}
