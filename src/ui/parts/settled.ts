import { useComputed } from '@preact/signals'

/** A value worked out from signals that redraws its reader only when it says something new, although the clock under it
 * ticks each second. JSON-native values only. */
export function useSettled<T>(work: () => T): T {
  const text = useComputed(() => JSON.stringify(work()))
  return JSON.parse(text.value) as T
}
