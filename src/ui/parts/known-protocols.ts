import { type StateUpdater, useEffect, useState } from 'preact/hooks'
import type { Kitchen, StoredProtocol } from '../kitchen.ts'
import { withOpened } from './start-draft.ts'

export function protocolRoute(id: string): string {
  return `#/protocols/${encodeURIComponent(id)}`
}

type Known = StoredProtocol[] | null

/** The protocols to choose from; null while they are read. */
export function useKnownProtocols(kitchen: Kitchen): [Known, (next: StateUpdater<Known>) => void] {
  const [known, setKnown] = useState<Known>(null)
  useEffect(() => {
    let here = true
    kitchen.protocols().then((found) => {
      if (here) setKnown(withOpened(found))
    })
    return () => {
      here = false
    }
  }, [kitchen])
  return [known, setKnown]
}
