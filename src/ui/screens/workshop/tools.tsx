// The foot of the workshop: undo and redo, sharing, a rehearsal, saving, and how the text stands.
import type { RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Programme } from '../../../core/protocol/model.ts'
import type { Kitchen } from '../../kitchen.ts'
import { useBox } from '../../parts/box.ts'
import { estimateWords } from '../../parts/estimate-words.ts'
import { protocolRoute } from '../../parts/known-protocols.ts'
import { onward } from '../../parts/onward.ts'
import { Pad } from '../../parts/pad.tsx'
import { idOfDraft, rehearsalOfOne } from '../../parts/rehearsal-route.ts'
import { SharePad } from '../../parts/share-pad.tsx'
import { routeOf } from '../../sharing.ts'
import type { ProtocolDraft } from '../../writing.ts'
import { problemsIn } from './text-pane.tsx'
import { ended } from './where.ts'
import type { Writing } from './writing.ts'

type Props = {
  kitchen: Kitchen
  draft: ProtocolDraft
  writing: Writing
  programme: Programme | null
  onProblem: (line: number) => void
}

/** The edge of the foot, and the ring around what has the focus. */
const RING_PX = 10

/** At the foot of the screen, in reach of a thumb, whatever is scrolled. */
export function Tools({ kitchen, draft, writing, programme, onProblem }: Props): preact.JSX.Element {
  // What was said of one text holds for no other.
  const [told, setTold] = useState<{ text: string; say: string } | null>(null)
  const said = told?.text === writing.text ? told.say : null
  const setSaid = (say: string): void => setTold({ text: writing.text, say })
  const [saving, setSaving] = useState(false)
  const isSound = (notYet: string): boolean => {
    const [first, ...others] = problemsIn(writing.lookNow())
    if (!first) return true
    const more = others.length === 0 ? '' : ` And ${others.length} more.`
    setSaid(`${notYet} Mend line ${first.line} first: ${ended(first.what)}${more}`)
    onProblem(first.line)
    return false
  }
  // The draft is kept as it stands, and is found again there.
  const rehearse = (): void => {
    if (isSound('Not rehearsed yet.')) kitchen.go(rehearsalOfOne(idOfDraft(draft.id)))
  }
  const save = async (): Promise<void> => {
    if (!isSound('Not saved yet.')) return
    const go = onward(kitchen)
    if (draft.cameAs !== undefined) {
      // What came from elsewhere may meet one of its title here: the dyer says what becomes of it.
      await writing.keeper.settled()
      return go(routeOf({ runs: true, draftId: draft.id }))
    }
    setSaving(true)
    const saved = await kitchen.saveProtocol(writing.text).catch(() => null)
    if (!saved?.ok) {
      setSaving(false)
      return setSaid(saved?.say ?? 'Not saved: the browser could not store it. The draft is still here.')
    }
    // A write that is still under way must not bring the draft back.
    await writing.keeper.stop()
    await kitchen.drafts.drop(writing.keeper.movedTo.value ?? draft.id)
    go(protocolRoute(saved.stored.id))
  }
  const problems = problemsIn(writing.outline).length
  const toFirst = (): void => {
    const [first] = problemsIn(writing.lookNow())
    if (first) onProblem(first.line)
  }
  const foot = useRef<HTMLDivElement>(null)
  useRoomFor(foot)
  return (
    <div ref={foot} class="workshop-tools">
      <div class="workshop-pads">
        <Pad disabled={writing.undo === null} onPress={() => writing.undo?.()}>
          Undo
        </Pad>
        <Pad disabled={writing.redo === null} onPress={() => writing.redo?.()}>
          Redo
        </Pad>
        <SharePad kitchen={kitchen} title={writing.title} text={writing.text} />
        <Pad onPress={rehearse}>Rehearse</Pad>
        <Pad look="solid" disabled={saving} onPress={save}>
          Save
        </Pad>
      </div>
      <p role="status" class={said === null ? 'soft' : undefined}>
        {said ?? (problems > 0 ? <Problems problems={problems} go={toFirst} /> : estimate(programme))}
      </p>
    </div>
  )
}

/** Few words: with more, a phone on its side would need another row. */
function Problems({ problems, go }: { problems: number; go: () => void }): preact.JSX.Element {
  const [say, where] = problems === 1 ? ['One problem', 'it'] : [`${problems} problems`, 'the first']
  return (
    <Pad label={`${say} to mend: go to ${where}`} onPress={go}>
      {say} to mend
    </Pad>
  )
}

function estimate(programme: Programme | null): string {
  return programme ? estimateWords(programme) : 'Can be run.'
}

/** What has the focus stands above the foot, however high that is just now. */
function useRoomFor(foot: RefObject<HTMLElement | null>): void {
  const { height } = useBox(foot, { width: 0, height: 0 })
  useLayoutEffect(() => {
    const { style } = document.documentElement
    style.scrollPaddingBottom = `${height + RING_PX}px`
    return () => void style.removeProperty('scroll-padding-bottom')
  }, [height])
}
