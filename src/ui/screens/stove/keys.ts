// Pedals and keyboards. A page-turner pedal is a keyboard with one or two keys, and it acts on the pot shown.
import { useEffect, useRef } from 'preact/hooks'
import { DEAD_MS, HOLD_MS, isDead, takeTap } from '../../parts/guard.ts'
import { isOnePedal, type Learned, roleOf } from '../../parts/pedal-keys.ts'
import { choicesNow, chosenOf, moveOn, wantsHold } from './choice.ts'
import type { Hand, Via } from './stage.ts'

export type KeyDeeds = {
  /** The pad of the pot shown, or of the pot that calls. */
  act: (via: Via) => void
  /** The call once more, or on to the next pot. */
  again: () => void
  /** To the pot with this number, from 1. */
  select: (no: number) => void
  /** What stands under the keys: they are dead for a moment when it changes. */
  layoutKey: string
  learned: Learned
  /** What last touched the app: an answer taken by a key or a pedal is written down as such. */
  hand: Hand
}

export function useKeys(deeds: KeyDeeds): void {
  // What changes elsewhere on the Stove must neither deaden the keys nor break off a press: only `layoutKey` does.
  const latest = useRef(deeds)
  latest.current = deeds
  const { layoutKey } = deeds
  useEffect(() => {
    const ears = keyEars(() => latest.current)
    const all = Object.entries(ears)
    for (const [type, hear] of all) addEventListener(type, hear as EventListener)
    return () => {
      ears.blur()
      for (const [type, hear] of all) removeEventListener(type, hear as EventListener)
    }
  }, [layoutKey])
}

type Ears = {
  keydown(event: KeyboardEvent): void
  keyup(): void
  pointerdown(): void
  blur(): void
}

function keyEars(deeds: () => KeyDeeds): Ears {
  const bornMs = performance.now()
  const dead = (nowMs: number): boolean => nowMs - bornMs < DEAD_MS
  const foot = footOn(() => isOnePedal(deeds().learned))
  return {
    keydown(event) {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
      const { act, again, select, learned, hand } = deeds()
      const { key, repeat } = event
      const role = roleOf(event, learned)
      const nowMs = performance.now()
      if (role !== null) {
        event.preventDefault()
        if (repeat || dead(nowMs)) return
        hand.via = 'pedal'
        const choices = choicesNow()
        if (choices !== null) foot.down(role, choices, nowMs)
        else if (takeTap(nowMs)) role === 'done' ? act('pedal') : again()
        return
      }
      const plain = key === ' ' || key === 'Enter'
      if (plain) hand.via = 'key'
      // On a pad with the focus these two press that pad; a sheet's own pads take the keys.
      if ((plain && isControl(event.target)) || document.querySelector('dialog[open]') !== null) return
      if (!plain && !/^[1-4]$/.test(key)) return
      event.preventDefault()
      if (repeat || dead(nowMs) || !takeTap(nowMs)) return
      const choices = plain ? choicesNow() : null
      if (choices !== null) moveOn(choices)
      else if (plain) act('key')
      else select(Number(key))
    },
    keyup: foot.up,
    blur: foot.lost,
    pointerdown: () => {
      deeds().hand.via = 'tap'
    }
  }
}

type Foot = {
  down(role: 'done' | 'next', choices: HTMLElement[], nowMs: number): void
  up(): void
  lost(): void
}

/** A foot among choices. Two pedals: one moves, the other takes. One pedal: a short press moves, a long one takes. */
function footOn(isOne: () => boolean): Foot {
  let ended: ((moves: boolean) => void) | null = null
  let shownMs = Number.NEGATIVE_INFINITY
  const end = (moves: boolean): void => {
    ended?.(moves)
    ended = null
  }
  return {
    down(role, choices, nowMs) {
      end(false)
      const chosen = chosenOf(choices) ?? (choices.length === 1 ? (choices[0] ?? null) : null)
      if (role === 'next') {
        if (takeTap(nowMs)) moveOn(choices)
        return
      }
      if (chosen === null) {
        // The first press only brings the foot to the answers; a second one in the same breath takes none.
        if (takeTap(nowMs)) moveOn(choices)
        shownMs = nowMs
        return
      }
      if (nowMs - shownMs < DEAD_MS || isDead(chosen, nowMs)) return
      const onePedal = isOne()
      if (wantsHold(chosen)) ended = holdBy(chosen, onePedal ? choices : null)
      else if (onePedal) ended = longPress(chosen, choices)
      else chosen.click()
    },
    up: () => end(true),
    lost: () => end(false)
  }
}

/** The pad keeps its own count, as under a finger. */
function holdBy(pad: HTMLElement, moveAmong: HTMLElement[] | null): (moves: boolean) => void {
  const tell = (type: string): boolean => pad.dispatchEvent(new KeyboardEvent(type, { key: 'Enter' }))
  const fromMs = performance.now()
  tell('keydown')
  return (moves) => {
    tell('keyup')
    if (moves && moveAmong && performance.now() - fromMs < HOLD_MS) moveOn(moveAmong)
  }
}

function longPress(pad: HTMLElement, choices: HTMLElement[]): (moves: boolean) => void {
  pad.setAttribute('data-held', '')
  let took = false
  const timer = setTimeout(() => {
    took = true
    pad.removeAttribute('data-held')
    pad.click()
  }, HOLD_MS)
  return (moves) => {
    clearTimeout(timer)
    pad.removeAttribute('data-held')
    if (moves && !took) moveOn(choices)
  }
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('input, textarea, select') !== null
}

function isControl(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('button, a, summary') !== null
}
