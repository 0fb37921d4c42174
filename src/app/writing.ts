// Drafts and versions: what the screens that write want, loaded when the first of them asks.
import type { Kept } from '../shell/settings/kept.ts'
import type { StoredProtocol } from '../ui/kitchen.ts'
import type { KitchenDrafts } from '../ui/writing.ts'
import { keptDrafts } from './drafts.ts'
import { newestWritten, versionsOf } from './versions.ts'

export function writingOn(kept: Kept): {
  drafts: KitchenDrafts
  newest(): Promise<StoredProtocol[]>
  versions(protocolId: string): Promise<StoredProtocol[]>
} {
  return {
    drafts: keptDrafts(kept),
    newest: () => newestWritten(kept),
    versions: (protocolId) => versionsOf(kept, protocolId)
  }
}
