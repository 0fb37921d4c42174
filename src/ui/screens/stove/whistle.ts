// A whistle at the Stove: rising does the act that calls, falling says it again. Among answers falling goes on to the next
// and rising takes it. What it did is said back and can be undone; what can't be undone wants a hand.
import { effect, untracked } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { takeTap } from '../../parts/guard.ts'
import { calledBy } from './asks.ts'
import type { Call, Calls } from './calls.ts'
import { choicesNow, chosenOf, moveOn, wantsHold } from './choice.ts'
import { livePots, nameOf } from './live.ts'
import type { Stage, Via } from './stage.ts'
import { undoDone } from './undo-say.ts'

type Props = {
  kitchen: Kitchen
  stage: Stage
  calls: Calls
  /** The pot that is large. */
  shown: string | null
  layoutKey: string
  /** What the pad of the pot that calls, or of the one that is shown, would do. */
  act: (via: Via) => void
  again: () => void
}

export function useWhistle(props: Props): void {
  const { kitchen, stage, layoutKey } = props
  const latest = useRef(props)
  latest.current = props
  const bornMs = useRef(0)
  useEffect(() => {
    bornMs.current = Date.now()
  }, [layoutKey])
  useEffect(() => {
    let last = kitchen.whistle.peek()?.heard.peek()?.no ?? 0
    return effect(() => {
      const heard = kitchen.whistle.value?.heard.value ?? null
      if (heard === null || heard.no === last) return
      last = heard.no
      // A breath that began before the call did not mean it.
      if (heard.beganMs < bornMs.current) return
      untracked(() => press(latest.current, heard.kind))
    })
  }, [kitchen])
  useEffect(() => {
    let last = stage.answered.peek()
    return stage.answered.subscribe((now) => {
      if (now === null || now === last) return
      last = now
      if (stage.hand.via === 'whistle') sayDone(kitchen, now.potId)
    })
  }, [kitchen, stage])
}

function sayDone(kitchen: Kitchen, potId: string): void {
  const pot = livePots(kitchen.pots.peek()).find((each) => each.potId === potId)
  if (pot) kitchen.whistle.peek()?.sayBack(`${nameOf(pot)}: ${undoDone(pot.state)}.`)
}

function press(props: Props, kind: 'rise' | 'fall'): void {
  const { kitchen, stage, calls, again } = props
  stage.hand.via = 'whistle'
  const choices = choicesNow()
  if (choices !== null) {
    choose(props, choices, kind)
    return
  }
  if (!takeTap(performance.now())) return
  if (kind === 'fall') {
    again()
    return
  }
  const beside = calls.full === null ? (calls.strips.find(({ alert }) => alert.kind !== 'headsUp') ?? null) : null
  if (beside !== null && beside.pot.potId !== props.shown) {
    showFirst(props, beside)
    return
  }
  const call = calls.full ?? beside
  const why = whyNot(call, beside !== null)
  if (why !== null) {
    stage.said.value = { potId: call?.pot.potId ?? '', say: why }
    kitchen.whistle.peek()?.sayBack(why)
  } else props.act('whistle')
}

/** A call beside a pot that has hands in it is brought up first: nobody answers what they do not see. */
function showFirst({ kitchen, stage }: Props, { pot, alert }: Call): void {
  stage.shown.value = pot.potId
  kitchen.whistle.peek()?.sayBack(`${nameOf(pot)}: ${calledBy(pot.state, alert).act}.`)
}

function choose({ kitchen, stage }: Props, choices: HTMLElement[], kind: 'rise' | 'fall'): void {
  const sayBack = (words: string): void => kitchen.whistle.peek()?.sayBack(words)
  const chosen = chosenOf(choices)
  if (kind === 'fall' || chosen === null) {
    if (!takeTap(performance.now())) return
    moveOn(choices)
    const now = chosenOf(choices)
    if (now) sayBack(wordsOf(now))
    return
  }
  if (wantsHold(chosen)) {
    const why = 'That can’t be undone: it wants a hand, press and hold.'
    stage.said.value = { potId: '', say: why }
    sayBack(why)
    // The pad itself minds bursts.
  } else chosen.click()
}

/** A false whistle must do nothing where nothing was asked. */
function whyNot(call: Call | null, opens: boolean): string | null {
  if (call === null) return 'A whistle was heard, but nothing calls. Nothing was written down.'
  if (call.pot.readOnly !== null) return 'This record is read only. Nothing was written down.'
  const { ask } = calledBy(call.pot.state, call.alert)
  return ask?.kind === 'question' && !opens ? 'Choose an answer: a falling whistle goes on to the next.' : null
}

function wordsOf(pad: HTMLElement): string {
  return pad.getAttribute('aria-label') ?? pad.textContent ?? ''
}
