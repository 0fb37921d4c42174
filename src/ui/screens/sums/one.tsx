// One sum: its form, and the answer worked out with each letter.
import { useState } from 'preact/hooks'
import type { Units } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import { Head, Rest } from './answer.tsx'
import type { Typed } from './field.ts'
import { Form } from './form.tsx'
import { type Answer, answerOf } from './reading.ts'
import type { Sum } from './sum.ts'
import { forgetTyped, fresh, keepTyped, keptTyped } from './typed.ts'

type Props = { kitchen: Pick<Kitchen, 'settings' | 'sharing'>; sum: Sum }

export function One({ kitchen, sum }: Props): preact.JSX.Element {
  const units: Units = unitsOf(kitchen.settings.value)
  const [typed, setTyped] = useState<Typed>(() => keptTyped(sum) ?? fresh(sum, units))
  const answer: Answer = answerOf(sum, typed, units)
  const change = (next: Typed): void => {
    keepTyped(sum.id, next)
    setTyped(next)
  }
  const clear = (): void => {
    forgetTyped(sum.id)
    setTyped(fresh(sum, units))
  }
  return (
    <div class="sums-wide">
      <Page
        title={sum.title}
        actions={
          <a class="sum-back" href="#/shelf/sums">
            All sums
          </a>
        }
      >
        <p class="sum-ask">{sum.ask}</p>
        <div class="sum">
          <Head answer={answer} />
          <div class="sum-form">
            <Form sum={sum} typed={typed} units={units} answer={answer} change={change} />
            <Pad onPress={clear}>Clear the form</Pad>
          </div>
          <Rest kitchen={kitchen} sum={sum} typed={typed} answer={answer} />
        </div>
      </Page>
    </div>
  )
}
