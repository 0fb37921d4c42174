import { useState } from 'preact/hooks'
import type { BackupFacts, LastBackup, MadeBackup } from '../../backup.ts'
import { exactBytes } from '../../parts/bytes-words.ts'
import { clockOf, dayName } from '../../parts/day-name.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { Going } from './going.tsx'
import type { KeepProps } from './index.tsx'
import { many } from './words.ts'

export function MakePart({ kitchen, backup, facts, changed }: KeepProps): preact.JSX.Element {
  const [share, setShare] = useState<number | null>(null)
  const [made, setMade] = useState<MadeBackup | null>(null)
  const make = async (): Promise<void> => {
    setMade(null)
    setShare(0)
    setMade(await backup.make(setShare).catch(broke))
    setShare(null)
    changed()
  }
  return (
    <section class="keep-part" aria-labelledby="keep-make">
      <h2 id="keep-make">Back up</h2>
      <p>
        One file with everything: {holds(facts)}, drafts, protocols and settings. It is not encrypted: keep it where
        only you look, and not on this device alone.
      </p>
      <p>
        <strong>{lastSay(facts.last, kitchen.now.peek())}</strong>
      </p>
      {share === null ? (
        <Pad kind="lesser" look="solid" onPress={() => void make()}>
          Back up now
        </Pad>
      ) : (
        <Going what="Writing the backup, then reading it once more" share={share} />
      )}
      {made === null ? null : made.ok ? (
        <Strip tone="info">{madeSay(made.last)}</Strip>
      ) : (
        <Strip tone={made.cancelled ? 'info' : 'bad'} urgent>
          {made.say}
        </Strip>
      )}
    </section>
  )
}

/** A backup says itself what it could not do; what breaks before it can must not leave the screen waiting. */
function broke(error: unknown): MadeBackup {
  const why = error instanceof Error ? error.message : String(error)
  return { ok: false, cancelled: false, say: `No backup was made (${why}). Try again.` }
}

function holds({ batches, photos, photoBytes, sounds, soundBytes }: BackupFacts): string {
  const photoSay = `${many(photos, 'photo', 'photos')}${photos > 0 ? ` (${exactBytes(photoBytes)})` : ''}`
  const soundSay = `${many(sounds, 'voice note', 'voice notes')}${sounds > 0 ? ` (${exactBytes(soundBytes)})` : ''}`
  return `${many(batches, 'batch', 'batches')}, ${photoSay}, ${soundSay}`
}

function lastSay(last: LastBackup | null, nowMs: number): string {
  if (last === null) return 'No backup was made on this device yet.'
  const where = last.where === 'chosen' ? 'where you put it' : 'among the downloads'
  return `Last backup: ${dayName(last.atMs, nowMs)}, ${clockOf(last.atMs)}, ${exactBytes(last.bytes)}, “${last.name}”, ${where}.`
}

function madeSay({ name, bytes, batches, where }: LastBackup): string {
  const read = `${many(batches, 'batch', 'batches')}, ${exactBytes(bytes)}, read back and whole`
  return where === 'chosen'
    ? `Backed up: ${read}. It is in “${name}”.`
    : `Backed up: ${read}. “${name}” was handed to the downloads: look that it is there, and copy it to another place.`
}
