// Choose a file, see what it would bring, and only then let it in.
import { useState } from 'preact/hooks'
import type { LookedAt, Restored, RestorePlan } from '../../backup.ts'
import { exactBytes, roomBytes } from '../../parts/bytes-words.ts'
import { clockOf, dayName } from '../../parts/day-name.ts'
import { FileField } from '../../parts/file-field.tsx'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { Going } from './going.tsx'
import type { KeepProps } from './index.tsx'
import { many, named } from './words.ts'

type Step =
  | { at: 'choose' }
  | { at: 'going'; what: string; share: number }
  | { at: 'refused'; say: string; instead: string }
  | { at: 'seen'; file: File; plan: RestorePlan }
  | { at: 'in'; done: Extract<Restored, { ok: true }> }

export function RestorePart({ kitchen, backup, changed }: KeepProps): preact.JSX.Element {
  const [step, setStep] = useState<Step>({ at: 'choose' })
  const refused = ({ say, instead }: { say: string; instead: string }): void => setStep({ at: 'refused', say, instead })
  const broke = (error: unknown): void => refused({ say: `It broke off (${String(error)}).`, instead: 'Try again.' })
  const look = async (file: File): Promise<void> => {
    const going = (share: number): void =>
      setStep({ at: 'going', what: 'Reading all of the file; nothing is changed', share })
    going(0)
    const looked: LookedAt = await backup.look(file, going)
    if (looked.ok) setStep({ at: 'seen', file, plan: looked.plan })
    else refused(looked)
  }
  const restore = async (file: File, plan: RestorePlan): Promise<void> => {
    const going = (share: number): void => setStep({ at: 'going', what: 'Bringing it in', share })
    going(0)
    const done = await backup.restore(file, plan, going)
    if (done.ok) setStep({ at: 'in', done })
    else refused(done)
    changed()
  }
  return (
    <section class="keep-part" aria-labelledby="keep-restore">
      <h2 id="keep-restore">Restore</h2>
      <p>
        A backup is added to what is here: nothing here is deleted or written over. The same backup twice is as good as
        once, and backups of several devices can be brought in in any order.
      </p>
      {step.at === 'going' ? (
        <Going what={step.what} share={step.share} />
      ) : step.at === 'seen' ? (
        <Seen
          plan={step.plan}
          nowMs={kitchen.now.peek()}
          go={() => void restore(step.file, step.plan).catch(broke)}
          leave={() => setStep({ at: 'choose' })}
        />
      ) : (
        <>
          {step.at === 'refused' ? (
            <Strip tone="bad" urgent>
              {step.say} {step.instead}
            </Strip>
          ) : null}
          {step.at === 'in' ? (
            <Strip tone="info" urgent actions={<Pad onPress={() => kitchen.go('#/dye-book')}>Open the Dye book</Pad>}>
              {doneSay(step.done)}
            </Strip>
          ) : null}
          <FileField label="Choose a backup to look at" take={(file) => look(file).catch(broke)} />
        </>
      )}
    </section>
  )
}

type SeenProps = { plan: RestorePlan; nowMs: number; go: () => void; leave: () => void }

function Seen({ plan, nowMs, go, leave }: SeenProps): preact.JSX.Element {
  const brings = bringsSay(plan, nowMs)
  const noRoom = plan.roomBytes !== null && plan.photoBytes > plan.roomBytes
  return (
    <div class="keep-seen">
      <p>
        <strong>{`The backup of ${dayName(plan.madeAtMs, nowMs)}, ${clockOf(plan.madeAtMs)}, is whole: ${many(plan.batches, 'batch', 'batches')}.`}</strong>
      </p>
      {noRoom ? (
        <Strip tone="bad" urgent>
          {`Its photos take ${roomBytes(plan.photoBytes)}, and ${roomBytes(plan.roomBytes ?? 0)} are left here. Make room first.`}
        </Strip>
      ) : null}
      <ul class="keep-facts">
        {(brings.length > 0 ? brings : ['Everything in it is here already.']).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <div class="keep-pads">
        {brings.length > 0 && !noRoom ? (
          <HoldPad look="solid" onHeld={go} layoutKey={plan.digest}>
            <span>Bring it in</span>
            <small>press and hold</small>
          </HoldPad>
        ) : null}
        <Pad kind="lesser" onPress={leave}>
          {brings.length > 0 ? 'Leave it' : 'Close'}
        </Pad>
      </div>
    </div>
  )
}

/** What would come in, a line each; nothing for what there is none of. */
function bringsSay(plan: RestorePlan, nowMs: number): string[] {
  const { fresh, grown, elsewhere, branched, heldBack } = plan
  const lines: [number, string][] = [
    [fresh.length, `New here: ${many(fresh.length, 'batch', 'batches')}: ${named(fresh, nowMs)}.`],
    [grown.length, `More of what is here: ${named(grown, nowMs)}.`],
    [
      plan.beside,
      `${many(plan.beside, 'entry', 'entries')} beside the batches: of the shelf, or of what was found of skeins.`
    ],
    [
      branched.length,
      `Continued on two devices: ${named(branched, nowMs)}. Both branches are kept and shown in the record.`
    ],
    [
      elsewhere.length,
      `On the stove of another device when this was saved: ${named(elsewhere, nowMs)}. Nothing of it will call here; its record asks whether you carry on.`
    ],
    [
      heldBack.length,
      `Left as it is, for it is on the stove here: ${named(heldBack, nowMs)}. Restore again when it has ended.`
    ],
    [
      plan.photos,
      `${many(plan.photos, 'photo or voice note', 'photos and voice notes')}, ${exactBytes(plan.photoBytes)}.`
    ],
    [plan.letGo, `${many(plan.letGo, 'photo stays', 'photos stay')} away: let go before.`],
    [plan.texts, `${many(plan.texts, 'draft, protocol or setting', 'drafts, protocols and settings')}.`],
    [
      plan.mended,
      `${many(plan.mended, 'entry', 'entries')} damaged here and whole there: the whole one takes the place, the damaged one is kept aside.`
    ],
    [
      plan.conflicts,
      `${many(plan.conflicts, 'entry', 'entries')} under a number that is taken here by another: ours stands, theirs is kept aside and shown in the record.`
    ],
    [
      plan.damaged,
      `${many(plan.damaged, 'entry was', 'entries were')} damaged where the backup was made, and will be shown as damaged.`
    ],
    [plan.damagedPhotos, `${many(plan.damagedPhotos, 'photo was', 'photos were')} damaged where the backup was made.`]
  ]
  const found = lines.filter(([count]) => count > 0).map(([, line]) => line)
  // What stays as it is would be nothing to bring in by itself.
  const stays = plan.asHere > 0 && found.length > 0 ? ['Settings of this device stay as they are.'] : []
  return [...found, ...stays]
}

function doneSay({ batches, entries, texts, heldBack, notKept }: Extract<Restored, { ok: true }>): string {
  const kept = texts === 0 ? '' : `, ${many(texts, 'draft, protocol or setting', 'drafts, protocols and settings')}`
  const back = heldBack === 0 ? '' : ` ${many(heldBack, 'batch was', 'batches were')} left alone: on the stove here.`
  return `In: ${many(batches, 'batch', 'batches')}, ${many(entries, 'entry', 'entries')}${kept}.${back}${notKept === null ? '' : ` ${notKept}`}`
}
