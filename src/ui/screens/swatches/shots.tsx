// Photos of the same things: taken or chosen, read when all marks are put, and what is wrong with them.
import type { Signal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import { isRefused } from '../../../core/chemistry/answer.ts'
import type { Fault } from '../../../core/colour/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import type { KitchenSwatches } from '../../swatches.ts'
import { type Album, changeShot, type Shot } from './draft.ts'
import { pixelMarks, stillToMark } from './marks.ts'

/** Reads each photo whose marks were moved; an answer to older marks is dropped. */
export function useReadings(swatches: KitchenSwatches, album: Signal<Album>): void {
  const { shots, shape } = album.value
  const wanted = shots.find(
    (shot) => shot.read === null && shot.problem === null && stillToMark(shape, shot.places).length === 0
  )
  useEffect(() => {
    const marks = wanted && pixelMarks(shape, wanted.places, wanted.photo)
    if (!wanted || !marks) return
    let here = true
    swatches.photos.read(wanted.id, marks).then((answer) => {
      if (!here) return
      if (!answer.ok) changeShot(album, wanted.id, { problem: answer.say })
      else if (!isRefused(answer.read)) changeShot(album, wanted.id, { read: answer.read })
      else {
        const [problem] = answer.read.problems
        changeShot(album, wanted.id, { problem: `${problem?.what ?? ''} ${problem?.instead ?? ''}` })
      }
    })
    return () => {
      here = false
    }
  }, [swatches, album, wanted, shape])
}

type TakeProps = { kitchen: Kitchen; swatches: KitchenSwatches; album: Signal<Album> }

export function TakePads({ kitchen, swatches, album }: TakeProps): preact.JSX.Element {
  const [problem, setProblem] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const take = async (from: 'camera' | 'file'): Promise<void> => {
    const file = await kitchen.media?.choosePicture(from)
    if (!file) return
    setBusy(true)
    const id = kitchen.newId()
    const opened = await swatches.photos.open(id, file)
    setBusy(false)
    setProblem(opened.ok ? null : opened.say)
    if (!opened.ok) return
    const { shots } = album.value
    // The same things lie there: their marks carry over, to be nudged.
    const places = shots.at(-1)?.places ?? {}
    const shot: Shot = { id, name: file.name, photo: opened.photo, places, read: null, problem: null }
    album.value = { ...album.value, shots: [...shots, shot], shown: shots.length }
  }
  const more = album.value.shots.length > 0 ? 'another photo' : 'the photo'
  return (
    <div class="swatches-take">
      <Pad
        kind="lesser"
        look={album.value.shots.length === 0 ? 'solid' : 'plain'}
        disabled={busy}
        onPress={() => void take('camera')}
      >
        {`Take ${more}`}
      </Pad>
      <Pad kind="lesser" disabled={busy} onPress={() => void take('file')}>
        {`Choose ${more}`}
      </Pad>
      <p role="status">{busy ? 'Reading the photo…' : ''}</p>
      {problem === null ? null : (
        <Strip tone="warn" urgent>
          {problem}
        </Strip>
      )}
    </div>
  )
}

export function Shots({ album }: { album: Signal<Album> }): preact.JSX.Element {
  const { shots, shown } = album.value
  const letGo = (): void => {
    album.value = { ...album.value, shots: shots.filter((_, nth) => nth !== shown), shown: Math.max(0, shown - 1) }
  }
  return (
    <div class="swatches-row">
      {shots.map(({ id, read, problem }, nth) => (
        <Pad key={id} selected={nth === shown} onPress={() => (album.value = { ...album.value, shown: nth })}>
          {`Photo ${nth + 1}${problem !== null || (read && read.faults.length > 0) ? ', has a fault' : ''}`}
        </Pad>
      ))}
      <Pad onPress={letGo}>{`Leave photo ${shown + 1} out`}</Pad>
      {shots.length < 3 ? (
        <p class="soft">Three photos or more of the same things, each laid anew, show how much readings stray.</p>
      ) : null}
    </div>
  )
}

type FaultsProps = Omit<Album, 'shown'> & { say: (fault: Fault) => string }

export function Faults({ shots, shape, say: faultSay }: FaultsProps): preact.JSX.Element {
  const said = shots.flatMap(({ read, problem, places }, nth) => {
    const still = stillToMark(shape, places).length
    const own = problem ?? (still > 0 ? `${still} ${still === 1 ? 'place is' : 'places are'} still to mark.` : null)
    return [...(own === null ? [] : [own]), ...(read?.faults.map(faultSay) ?? [])].map(
      (say) => `Photo ${nth + 1}. ${say}`
    )
  })
  const read = shots.every((shot) => shot.read !== null)
  return (
    <section class="swatches-part" aria-labelledby="swatches-faults">
      <h2 id="swatches-faults">What is wrong with it</h2>
      {said.length > 0 ? (
        <ul class="swatches-faults" role="status">
          {said.map((say) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
      ) : (
        <p role="status">{read ? 'Nothing that was looked for: light, card, brightness, size.' : 'Reading…'}</p>
      )}
    </section>
  )
}
