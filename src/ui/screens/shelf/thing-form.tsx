// A thing put on the shelf, or what its label says changed.
import { useRef, useState } from 'preact/hooks'
import type { Shelved } from '../../../core/shelf/state.ts'
import { type ThingKind, thingKinds } from '../../../core/shelf/thing.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import { onward } from '../../parts/onward.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import type { KitchenShelf, ShelfSent } from '../../shelf.ts'
import { countedIn, type Draft, draftOf, emptyDraft } from './fields.ts'
import { FormFields } from './form-fields.tsx'
import { type Problems, readDraft } from './read-draft.ts'
import { itemRoute, SHELF } from './routes.ts'
import { showFirstProblem } from './show-first-problem.ts'
import { unitShown } from './typed.ts'
import { kindWords } from './words.ts'

type Props = { kitchen: Kitchen; shelf: KitchenShelf }

export function AddThing({ kitchen, shelf }: Props): preact.JSX.Element {
  const [kind, setKind] = useState<ThingKind>('stock')
  const [draft, setDraft] = useState<Draft>(emptyDraft)
  const itemId = useRef(kitchen.newId()).current
  const form = useForm(kitchen, () => readDraft(kind, draft, unitsOf(kitchen.settings.value), kitchen.now.peek(), null))
  const units = unitsOf(kitchen.settings.value)
  const unit = countedIn(kind, draft)
  const add = (): Promise<void> =>
    form.send(
      ({ thing, level }) => shelf.send(itemId, { type: 'AddThing', thing, level }, { commandId: form.commandId }),
      (go) => go(itemRoute(itemId))
    )
  return (
    <Page title="Put on the shelf" actions={<Pad onPress={() => kitchen.go(SHELF)}>Back</Pad>}>
      <div class="shelf-form">
        <ChoiceRow
          legend="What is it?"
          choices={thingKinds.map((each) => ({ value: each, label: kindWords[each].one }))}
          value={kind}
          onChoose={(next) => {
            setKind(next)
            form.clear()
          }}
        />
        <FormFields kind={kind} draft={draft} change={setDraft} problems={form.problems} units={units} />
        {unit === null ? null : (
          <TextField
            label="How much is there"
            hint="Measured or read off the bottle. Leave it empty to count nothing."
            value={draft.level ?? ''}
            onInput={(level) => setDraft({ ...draft, level })}
            problem={form.problems.level ?? null}
            kind="decimal"
            unit={unitShown(unit, units)}
          />
        )}
        <Failed say={form.failed} />
        <Pad kind="lesser" look="solid" onPress={add} disabled={form.busy}>
          Put it on the shelf
        </Pad>
      </div>
    </Page>
  )
}

export function ChangeThing({ kitchen, shelf, item }: Props & { item: Shelved }): preact.JSX.Element {
  const units = unitsOf(kitchen.settings.value)
  const [draft, setDraft] = useState<Draft>(() => draftOf(item.thing, units))
  const { kind } = item.thing
  const form = useForm(kitchen, () => readDraft(kind, draft, units, kitchen.now.peek(), item.thing))
  const back = (): void => kitchen.go(itemRoute(item.itemId))
  const change = (): Promise<void> =>
    form.send(
      ({ thing }) =>
        shelf.send(item.itemId, { type: 'ChangeThing', thing, why: draft.why ?? '' }, { commandId: form.commandId }),
      (go) => go(itemRoute(item.itemId))
    )
  return (
    <Page title={`Change ${item.thing.name}`} actions={<Pad onPress={back}>Back</Pad>}>
      <div class="shelf-form">
        <p class="soft">What it said before is kept. Batches that drew from it keep what the label said then.</p>
        <FormFields kind={kind} draft={draft} change={setDraft} problems={form.problems} units={units} />
        <TextField
          label="Why"
          hint="For whoever reads its history."
          value={draft.why ?? ''}
          onInput={(why) => setDraft({ ...draft, why })}
        />
        <Failed say={form.failed} />
        <Pad kind="lesser" look="solid" onPress={change} disabled={form.busy}>
          Change it
        </Pad>
      </div>
    </Page>
  )
}

export function Failed({ say }: { say: string | null }): preact.JSX.Element | null {
  if (say === null) return null
  return (
    <Strip tone="bad" urgent>
      {say}
    </Strip>
  )
}

/** `go` leads on as long as nobody went elsewhere meanwhile. */
type Done = (go: (to: string) => void) => void
type Ready<T> = Extract<T, { ok: true }>

/** Reads, sends, and says what is wrong where it is wrong. One id for all tries: what is sent twice is done once. */
export function useForm<T extends { ok: true } | { ok: false; problems: Problems }>(kitchen: Kitchen, read: () => T) {
  const [problems, setProblems] = useState<Problems>({})
  const [failed, setFailed] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const commandId = useRef(kitchen.newId()).current
  const wrong = (found: Problems): void => {
    setProblems(found)
    showFirstProblem()
  }
  return {
    problems,
    failed,
    busy,
    commandId,
    clear() {
      setProblems({})
      setFailed(null)
    },
    async send(send: (ready: Ready<T>) => Promise<ShelfSent>, done: Done): Promise<void> {
      setFailed(null)
      const ready = read()
      if (!ready.ok) return wrong(ready.problems)
      setProblems({})
      setBusy(true)
      const go = onward(kitchen)
      const sent = await send(ready as Ready<T>)
      setBusy(false)
      if (sent.ok) return done(go)
      if (sent.problems.length === 0) return setFailed(sent.say)
      wrong(Object.fromEntries(sent.problems.map(({ field, what, instead }) => [field, `${what} ${instead}`])))
    }
  }
}
