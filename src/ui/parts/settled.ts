import { computed } from '@preact/signals'

/** A value worked out from signals that redraws its reader only when it says something new, although the clock under it
 * ticks each second. JSON-native values only; to be called while drawing. */
export function useSettled<T>(work: () => T): T {
  // Made anew with each drawing: no signal tells that what `work` was given is another, or that it reads other signals now.
  const text = computed(() => JSON.stringify(work()))
  return JSON.parse(text.value) as T
}
