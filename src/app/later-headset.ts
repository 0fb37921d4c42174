// The headset for the screens from the first moment on: what they ask of it waits until it is fetched.
import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Kitchen } from '../ui/kitchen.ts'
import type { Extras } from './extras.ts'

type OfScreens = NonNullable<Kitchen['headset']>

export function laterHeadset(extras: ReadonlySignal<Extras | null>): OfScreens {
  const told = signal<Parameters<OfScreens['tell']>[0]>(null)
  effect(() => extras.value?.headset.kitchen.tell(told.value))
  return {
    tell(call) {
      told.value = call
    },
    hear: (press) => effect(() => extras.value?.headset.kitchen.hear(press))
  }
}
