// Where records are kept, as the browser tells it.
import { useEffect, useState } from 'preact/hooks'
import { showNumber } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'

type Facts = Awaited<ReturnType<NonNullable<Kitchen['storage']>>>
type Sizes = Awaited<ReturnType<NonNullable<Kitchen['media']>['sizes']>>

export function StoragePart({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [facts, setFacts] = useState<Facts | null>(null)
  const [sizes, setSizes] = useState<Sizes | 'unread' | null>(null)
  useEffect(() => {
    let here = true
    kitchen.media?.sizes().then(
      (found) => here && setSizes(found),
      () => here && setSizes('unread')
    )
    kitchen.storage?.().then((found) => {
      if (here) setFacts(found)
    })
    return () => {
      here = false
    }
  }, [kitchen])
  const saved = kitchen.lamps.value.find((lamp) => lamp.id === 'saved')
  return (
    <section class="settings-part" aria-labelledby="settings-storage">
      <h2 id="settings-storage">Records</h2>
      <ul class="settings-facts">
        <li>Everything stays on this device. Nothing is sent anywhere.</li>
        {saved ? <li>{`${saved.say}.`}</li> : null}
        {facts ? <li>{`${facts.say.replace(/\.$/, '')}.`}</li> : null}
        {facts && facts.usedBytes !== null ? (
          <li>{`In use: ${megabytes(facts.usedBytes)}${facts.roomBytes === null ? '' : ` of ${megabytes(facts.roomBytes)}`}.`}</li>
        ) : null}
        {sizes === null ? null : <li>{mediaSay(sizes)}</li>}
        <li>A lost or broken device takes its records along. Export those you need.</li>
      </ul>
    </section>
  )
}

function mediaSay(sizes: Sizes | 'unread'): string {
  if (sizes === 'unread') return 'How much photos and voice notes take can’t be read now.'
  const { photos, photoBytes, sounds, soundBytes } = sizes
  if (photos + sounds === 0) return 'No photos or voice notes are kept.'
  const photoSay = `${photos} ${photos === 1 ? 'photo' : 'photos'}, ${exact(photoBytes)}`
  const soundSay = `${sounds} voice ${sounds === 1 ? 'note' : 'notes'}, ${exact(soundBytes)}`
  return `Of it ${photoSay}, and ${soundSay}. Each can be let go in its record.`
}

function exact(bytes: number): string {
  return bytes < 1e6 ? `${showNumber(Math.ceil(bytes / 1000), 0)} kB` : `${showNumber(bytes / 1e6, 1)} MB`
}

function megabytes(bytes: number): string {
  return bytes < 1e6
    ? 'under 1 MB'
    : bytes < 1e9
      ? `${showNumber(bytes / 1e6, 0)} MB`
      : `${showNumber(bytes / 1e9, 1)} GB`
}
