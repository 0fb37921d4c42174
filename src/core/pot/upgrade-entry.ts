// Numbered steps from every older entry version to the next. A step is never changed once a journal was written with
// it; a new version adds the next number, a stored journal in tests/core/pot/data, and a test that it still opens.
import { ENTRY_VERSION } from './entry.ts'

type Raw = Record<string, unknown>

const steps: Record<number, (entry: Raw) => Raw> = {
  // Version 1 knew one time, a bare name, and an event of its own for the acid.
  1: ({ timeMs, who, event, ...rest }) => ({
    ...rest,
    atMs: timeMs,
    recordedAtMs: timeMs,
    by: who === 'clock' ? { kind: 'clock' } : { kind: 'person', name: who === '' ? null : who, via: 'tap' },
    event: eventOfVersion1(event as Raw)
  })
}

/** Brings an entry of an older version up to today's, step by step; null where a step can't read it. */
export function upgradeEntry(entry: Raw): Raw | null {
  let today = entry
  for (let version = entry.v as number; version < ENTRY_VERSION; version++) {
    const step = steps[version]
    if (step === undefined || typeof today.event !== 'object' || today.event === null) return null
    today = { ...step(today), v: version + 1 }
  }
  return today
}

function eventOfVersion1(event: Raw): Raw {
  if (event.type !== 'AcidAdded') return event
  const { path, name, plannedML, amountML } = event
  const amount = (volumeML: unknown): Raw => ({ value: volumeML, unit: 'mL', of: name, asEntered: `${volumeML} mL` })
  return {
    type: 'Dosed',
    path,
    of: name,
    planned: plannedML === null ? null : amount(plannedML),
    added: amount(amountML),
    fromPotId: null
  }
}
