// Room on the device. Photos and voice notes are what can be let go; entries never are.
import { useEffect, useState } from 'preact/hooks'
import type { SwatchEvent } from '../../../core/record/swatch.ts'
import type { Trimmable } from '../../backup.ts'
import type { Kitchen } from '../../kitchen.ts'
import { exactBytes, roomBytes } from '../../parts/bytes-words.ts'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import type { KeepProps } from './index.tsx'
import { many, nameOf } from './words.ts'

const SHOWN = 8
/** Of the room the browser gives, so much used is worth a word. */
const TIGHT = 0.8

export function RoomPart({ kitchen, backup, facts, changed }: KeepProps): preact.JSX.Element {
  const [lines, setLines] = useState<Trimmable[] | null>(null)
  const [failed, setFailed] = useState<string | null>(null)
  useEffect(() => {
    let here = true
    backup.trimmable(SHOWN).then(
      (found) => here && setLines(found),
      () => here && setFailed('Which batches hold photos can’t be read now.')
    )
    return () => {
      here = false
    }
  }, [backup, facts])
  const letGo = async (line: Trimmable): Promise<void> => {
    setFailed(await lettingGo(kitchen, line))
    changed()
  }
  const { usedBytes, roomBytes: room } = facts
  return (
    <section class="keep-part" aria-labelledby="keep-room">
      <h2 id="keep-room">Room on this device</h2>
      {usedBytes === null || room === null ? (
        <p>This browser does not say how much room there is.</p>
      ) : (
        <p>{`In use ${roomBytes(usedBytes)}, left ${roomBytes(Math.max(0, room - usedBytes))}.`}</p>
      )}
      {usedBytes !== null && room !== null && usedBytes > TIGHT * room ? (
        <Strip tone="warn">Room runs short. Back up, then let old photos go.</Strip>
      ) : null}
      <p>Photos and voice notes are the first thing to let go. What was done, read and noted always stays.</p>
      {failed === null ? null : (
        <Strip tone="bad" urgent>
          {failed}
        </Strip>
      )}
      {lines === null ? null : lines.length === 0 ? (
        <p>No photos or voice notes of ended batches are kept.</p>
      ) : (
        <ul class="keep-lines">
          {lines.map((line) => (
            <Line key={line.potId} line={line} nowMs={kitchen.now.peek()} letGo={() => void letGo(line)} />
          ))}
        </ul>
      )}
    </section>
  )
}

const WHY = 'to make room'

/** What went wrong; null: all of it went. */
async function lettingGo(kitchen: Kitchen, { potId, hashes, swatchHashes }: Trimmable): Promise<string | null> {
  for (const sha256 of hashes) {
    const sent = await kitchen.send(potId, { type: 'TrimMedia', sha256, why: WHY })
    if (!sent.ok) return sent.say
  }
  if (swatchHashes.length === 0) return null
  try {
    const events = swatchHashes.map((sha256): SwatchEvent => ({ type: 'MediaTrimmed', sha256, why: WHY }))
    const sent = await (await kitchen.swatches?.())?.keep(potId, events, [], kitchen.newId())
    return sent?.ok ? null : (sent?.say ?? NO_SWATCHES)
  } catch {
    return NO_SWATCHES
  }
}

const NO_SWATCHES = 'The photos of its skein stay: what lets them go can’t be opened now. Try again.'

function Line({ line, nowMs, letGo }: { line: Trimmable; nowMs: number; letGo: () => void }): preact.JSX.Element {
  const { photos, sounds, bytes, backedUp } = line
  const name = nameOf(line.colourway, line.startedAtMs, nowMs)
  const counts = [
    photos > 0 ? many(photos, 'photo', 'photos') : '',
    sounds > 0 ? many(sounds, 'voice note', 'voice notes') : ''
  ].filter(Boolean)
  return (
    <li class="keep-line">
      <span class="keep-line-words">
        <strong>{name}</strong>
        <span class="soft">{`${counts.join(', ')}, ${exactBytes(bytes)}${backedUp ? '' : ' · in no backup yet'}`}</span>
      </span>
      <HoldPad onHeld={letGo} layoutKey={line.hashes[0] ?? line.swatchHashes[0]}>
        <span>{`Let go: ${line.colourway}`}</span>
        <small>press and hold</small>
      </HoldPad>
    </li>
  )
}
