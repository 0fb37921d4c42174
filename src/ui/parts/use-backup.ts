import { useEffect, useState } from 'preact/hooks'
import type { KitchenBackup } from '../backup.ts'
import type { Kitchen } from '../kitchen.ts'

/** What backups need, fetched when a screen first wants it; null until then, and where there is none. */
export function useBackup(kitchen: Kitchen): KitchenBackup | null {
  const [backup, setBackup] = useState<KitchenBackup | null>(null)
  const fetch = kitchen.backup?.value ?? null
  useEffect(() => {
    let here = true
    fetch?.().then(
      (made) => here && setBackup(made),
      () => {}
    )
    return () => {
      here = false
    }
  }, [fetch])
  return backup
}
