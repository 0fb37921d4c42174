// A KitchenBackup that answers what a test wants, and remembers what it was asked.
import type { BackupFacts, KitchenBackup, RestorePlan } from '../../../src/ui/backup.ts'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'

export const T = Date.UTC(2031, 5, 14, 12)

export const noPlan: RestorePlan = {
  madeAtMs: T - 3_600_000,
  digest: 'd',
  batches: 2,
  fresh: [],
  grown: [],
  heldBack: [],
  elsewhere: [],
  branched: [],
  entries: 0,
  beside: 0,
  conflicts: 0,
  mended: 0,
  damaged: 0,
  photos: 0,
  photoBytes: 0,
  damagedPhotos: 0,
  letGo: 0,
  texts: 0,
  asHere: 0,
  roomBytes: 1e9
}

export const facts: BackupFacts = {
  last: null,
  batches: 3,
  photos: 2,
  photoBytes: 1_200_000,
  sounds: 1,
  soundBytes: 90_000,
  usedBytes: 5e6,
  roomBytes: 1e9
}

export function kitchenWith(answers: Partial<KitchenBackup>): TestKitchen {
  const kitchen = aKitchen({ nowMs: T })
  const backup: KitchenBackup = {
    // Another each time, as a device gives it.
    facts: async () => ({ ...facts }),
    make: async () => ({ ok: false, cancelled: true, say: 'No place was chosen: no backup was made.' }),
    look: async () => ({ ok: true, plan: noPlan }),
    restore: async () => ({ ok: true, batches: 0, entries: 0, texts: 0, heldBack: 0, notKept: null }),
    news: async () => ({ dueDays: null, never: true, said: null }),
    putOff: async () => {},
    dismissSaid: async () => {},
    trimmable: async () => [],
    aside: async () => [],
    ...answers
  }
  return Object.assign(kitchen, { backup: { value: async () => backup } })
}
