// What people were told of their taps, against what stands in the journal.
import type { PotEntry } from '../../../src/session/ports.ts'
import type { Sent } from '../kitchen.ts'

/** `entriesOf`: what is stored of a pot. */
export function tapsBroken(sent: readonly Sent[], entriesOf: (potId: string) => readonly PotEntry[]): string[] {
  const broken: string[] = []
  const stored = new Map<string, Set<string>>()
  for (const potId of new Set(sent.flatMap(({ potIds }) => potIds))) {
    stored.set(potId, new Set(entriesOf(potId).map(({ commandId }) => commandId)))
  }
  const times = new Map<string, number>()
  for (const { commandId } of sent) times.set(commandId, (times.get(commandId) ?? 0) + 1)
  for (const { commandId, potIds, outcome, command } of sent) {
    const on = potIds.filter((potId) => stored.get(potId)?.has(commandId))
    if (on.length > 0 && on.length < potIds.length) broken.push(`${commandId} was for two pots and is stored for one`)
    // An id that came several times may have been refused once and taken once.
    const refused = outcome?.ok === false && outcome.why === 'refused' && times.get(commandId) === 1
    if (refused && on.length > 0) broken.push(`${commandId} (${command.type}) was refused and is stored`)
  }
  return broken
}
