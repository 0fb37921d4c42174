import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../kitchen.ts'
import type { KitchenShelf, OnShelf } from '../shelf.ts'

/** `things` null: it is not read yet. `failed`: why it can't be. No shelf at all is an empty one. */
export type ShelfSeen = { things: readonly OnShelf[] | null; failed: string | null }

const noShelf: ShelfSeen = { things: [], failed: null }

/** What stands on the shelf, kept up while the form is open. */
export function useShelfSeen(kitchen: Kitchen): ShelfSeen {
  const [shelf, setShelf] = useState<KitchenShelf | null>(null)
  const [failed, setFailed] = useState<string | null>(null)
  useEffect(() => {
    let here = true
    kitchen
      .shelf?.()
      .then((found) => here && setShelf(found))
      .catch(() => here && setFailed('The shelf did not come. Type what the labels say, or open this form again.'))
    return () => {
      here = false
    }
  }, [kitchen])
  if (!kitchen.shelf) return noShelf
  return { things: shelf?.things.value ?? (failed === null ? null : []), failed: failed ?? shelf?.unread.value ?? null }
}
