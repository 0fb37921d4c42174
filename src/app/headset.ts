// The headset between the shell and the screens: its lamp in words, and the touch that a browser waits for.
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { Headset, HeadsetState } from '../shell/media-session/headset.ts'
import type { Kitchen, Lamp } from '../ui/kitchen.ts'

export type HeadsetOnStove = {
  want(on: boolean): void
  lamp: ReadonlySignal<Lamp | null>
  kitchen: NonNullable<Kitchen['headset']>
}

export function headsetOnStove(
  headset: Headset,
  go: (route: string) => void,
  page: EventTarget = document
): HeadsetOnStove {
  const touched = (): void => {
    if (headset.state() === 'blocked') headset.resume()
  }
  for (const type of ['pointerup', 'click', 'keydown']) page.addEventListener(type, touched, { capture: true })
  const state = signal<HeadsetState>(headset.state())
  headset.onState(() => {
    state.value = headset.state()
  })
  const heard = new Set<Parameters<NonNullable<Kitchen['headset']>['hear']>[0]>()
  headset.onPress((press) => {
    // Nobody sees the pots: a press brings them up, it answers nothing unseen.
    if (heard.size === 0) go('#/stove')
    for (const hear of heard) hear(press)
  })
  return {
    want: headset.want,
    lamp: computed(() => lampOf(state.value, headset.resume)),
    kitchen: {
      tell: headset.tell,
      hear(press) {
        heard.add(press)
        return () => heard.delete(press)
      }
    }
  }
}

function lampOf(state: HeadsetState, resume: () => void): Lamp | null {
  const id = 'headset'
  switch (state) {
    case 'off':
      return null
    case 'ready':
      return { id, ok: true, say: 'Headset buttons answer', tap: null }
    case 'paused':
      return { id, ok: false, say: 'Headset paused: buttons don’t answer. Tap to go on', tap: resume }
    case 'blocked':
      return { id, ok: false, say: 'Headset buttons wait for a tap here', tap: resume }
    case 'none':
      return { id, ok: false, say: 'No headset buttons in this browser', tap: null }
  }
}
