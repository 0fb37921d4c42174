// Where records are kept, as the browser tells it.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { exactBytes, roomBytes } from '../../parts/bytes-words.ts'
import { Pad } from '../../parts/pad.tsx'

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
          <li>{`In use: ${roomBytes(facts.usedBytes)}${facts.roomBytes === null ? '' : ` of ${roomBytes(facts.roomBytes)}`}.`}</li>
        ) : null}
        {sizes === null ? null : <li>{mediaSay(sizes)}</li>}
        <li>A lost or broken device takes its records along. A backup in another place brings them back.</li>
      </ul>
      {kitchen.backup ? (
        <Pad kind="lesser" onPress={() => kitchen.go('#/settings/backup')}>
          Backup, restore, make room
        </Pad>
      ) : null}
    </section>
  )
}

function mediaSay(sizes: Sizes | 'unread'): string {
  if (sizes === 'unread') return 'How much photos and voice notes take can’t be read now.'
  const { photos, photoBytes, sounds, soundBytes } = sizes
  if (photos + sounds === 0) return 'No photos or voice notes are kept.'
  const photoSay = `${photos} ${photos === 1 ? 'photo' : 'photos'}, ${exactBytes(photoBytes)}`
  const soundSay = `${sounds} voice ${sounds === 1 ? 'note' : 'notes'}, ${exactBytes(soundBytes)}`
  return `Of it ${photoSay}, and ${soundSay}. Each can be let go in its record.`
}
