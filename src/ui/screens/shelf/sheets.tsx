// The small acts on a thing: a level corrected, more put in, put away, used up, thrown out, brought back.
import { useState } from 'preact/hooks'
import type { ShelfCommand } from '../../../core/shelf/commands.ts'
import { unitOf } from '../../../core/shelf/thing.ts'
import type { Kitchen } from '../../kitchen.ts'
import { TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import type { KitchenShelf, OnShelf } from '../../shelf.ts'
import { Failed, useForm } from './thing-form.tsx'
import { problemWords, readLevel, unitShown } from './typed.ts'
import { levelWords } from './words.ts'

export type SheetAct = 'level' | 'refill' | 'away' | 'back' | 'used' | 'discard'

type Props = { act: SheetAct; kitchen: Kitchen; shelf: KitchenShelf; one: OnShelf; close: () => void }
type Read = { ok: true; command: ShelfCommand } | { ok: false; problems: Record<string, string> }

const words: Record<SheetAct, { title: string; pad: string; amount?: string; why?: string; hint?: string }> = {
  level: {
    title: 'Correct the level',
    pad: 'Correct it',
    amount: 'How much is there now',
    why: 'Why',
    hint: 'The old figure and the reason stay in its history. Example: spilled; measured anew.'
  },
  refill: { title: 'More put in', pad: 'Put it in', amount: 'How much was put in' },
  away: { title: 'Put away', pad: 'Put it away', why: 'Why, if you like' },
  back: { title: 'Bring back', pad: 'Bring it back' },
  used: { title: 'Used up', pad: 'It is used up' },
  discard: {
    title: 'Throw out',
    pad: 'It is thrown out',
    why: 'Where to',
    hint: 'Stocks go to the hazardous-waste point, to the sewer only if local rules allow it; never to a storm drain or the garden.'
  }
}

export function ActSheet({ act, kitchen, shelf, one, close }: Props): preact.JSX.Element {
  const [amount, setAmount] = useState('')
  const [why, setWhy] = useState('')
  const units = unitsOf(kitchen.settings.value)
  const unit = unitOf(one.item.thing) ?? 'mL'
  const was = one.level?.left ?? null
  const form = useForm(kitchen, (): Read => {
    const read = words[act].amount === undefined ? null : readLevel(amount, unit, units)
    const problems: Record<string, string> = {}
    if (read && !read.ok) problems.amount = problemWords(read)
    if (act === 'level' && why.trim() === '') problems.why = 'Say why, for example: spilled.'
    if (Object.keys(problems).length > 0) return { ok: false, problems }
    return { ok: true, command: commandOf(act, read?.ok ? read.value : 0, why, was) }
  })
  const { title, pad, amount: asked, why: reason, hint } = words[act]
  const problem = form.problems.amount ?? form.problems.now ?? null
  const send = (): Promise<void> =>
    form.send(({ command }) => shelf.send(one.item.itemId, command, { commandId: form.commandId }), close)
  return (
    <Sheet title={title} onClose={close}>
      {one.level && act === 'level' ? <p class="soft">{`Worked out: ${levelWords(one.level, units).left}.`}</p> : null}
      {asked === undefined ? null : (
        <TextField
          label={asked}
          value={amount}
          onInput={setAmount}
          problem={problem}
          kind="decimal"
          unit={unitShown(unit, units)}
        />
      )}
      {reason === undefined ? null : (
        <TextField label={reason} hint={hint} value={why} onInput={setWhy} problem={form.problems.why ?? null} />
      )}
      {act === 'used' ? <p>It goes off the shelf with nothing left. Its history stays.</p> : null}
      {act === 'back' ? <p>It stands on the shelf again. If its level is not right, correct it.</p> : null}
      <Failed say={form.failed} />
      <Pad kind="lesser" look="solid" onPress={send} disabled={form.busy}>
        {pad}
      </Pad>
    </Sheet>
  )
}

function commandOf(act: SheetAct, amount: number, why: string, was: number | null): ShelfCommand {
  switch (act) {
    case 'level':
      return { type: 'CorrectLevel', was, now: amount, why }
    case 'refill':
      return { type: 'Refill', amount }
    case 'away':
      return { type: 'PutAway', why }
    case 'back':
      return { type: 'BringBack' }
    case 'used':
      return { type: 'UseUp', was }
    case 'discard':
      return { type: 'Discard', was, how: why }
  }
}
