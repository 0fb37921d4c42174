import { type ReadonlySignal, signal } from '@preact/signals'
import type { AppUpdates } from '../shell/updates/app-updates.ts'

export type Updates = { waiting: ReadonlySignal<boolean>; apply(): Promise<void> }

/** A waiting version is taken over only when somebody says so, and never while a pot is watched. */
export function updates(shell: AppUpdates): Updates {
  const waiting = signal(false)
  shell.onWaiting(() => {
    waiting.value = true
  })
  return { waiting, apply: shell.apply }
}
