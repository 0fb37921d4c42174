export type Persistence = { kept: boolean; say: string }

const UNTOLD: Persistence = {
  kept: false,
  say: 'This browser does not say whether it keeps records. Export those you need.'
}
const KEPT: Persistence = { kept: true, say: 'Records are kept on this device' }
const MAY_GO: Persistence = {
  kept: false,
  say: 'The browser may clear records when space runs short. Export those you need.'
}

/** What the browser says now, without asking it for anything, and how much room there is; null where it does not say. */
export async function storageNow(
  storage: StorageManager | undefined = navigator.storage
): Promise<Persistence & { usedBytes: number | null; roomBytes: number | null }> {
  try {
    const [kept, room] = await Promise.all([storage?.persisted?.(), storage?.estimate?.()])
    const said = kept === undefined ? UNTOLD : kept ? KEPT : MAY_GO
    return { ...said, usedBytes: room?.usage ?? null, roomBytes: room?.quota ?? null }
  } catch {
    return { ...UNTOLD, usedBytes: null, roomBytes: null }
  }
}

/** Asks the browser to keep the journal even when the device runs short of space. Some ask the person, some decide. */
export async function askToKeep(storage: StorageManager | undefined = navigator.storage): Promise<Persistence> {
  if (typeof storage?.persist !== 'function') {
    return UNTOLD
  }
  try {
    const kept = (await storage.persisted()) || (await storage.persist())
    if (kept) return KEPT
  } catch {
    // Refused is refused, in whichever way.
  }
  return MAY_GO
}
