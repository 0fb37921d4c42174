import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import type { KitchenShelf } from '../../shelf.ts'

/** The shelf, read anew with each opening of a screen. `failed`: its part of the app could not be loaded. */
export function useShelf(kitchen: Kitchen): { shelf: KitchenShelf | null; failed: boolean; again: () => void } {
  const [shelf, setShelf] = useState<KitchenShelf | null>(null)
  const [failed, setFailed] = useState(false)
  const [tries, setTries] = useState(0)
  useEffect(() => {
    let here = true
    kitchen.shelf?.().then(
      (opened) => here && setShelf(opened),
      () => here && setFailed(true)
    )
    return () => {
      here = false
    }
  }, [kitchen, tries])
  const again = (): void => {
    setFailed(false)
    setTries(tries + 1)
  }
  return { shelf, failed, again }
}
