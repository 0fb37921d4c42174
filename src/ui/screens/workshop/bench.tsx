// The bench of the workshop: both ways into one text, what it comes to, and the way out as a saved protocol.
import { useLayoutEffect, useState } from 'preact/hooks'
import { strangeEnding } from '../../../core/protocol/file-name.ts'
import type { Kitchen } from '../../kitchen.ts'
import { useWindow } from '../../parts/box.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import type { ProtocolDraft, WaitingWords } from '../../writing.ts'
import { Live, useProgramme } from './live.tsx'
import { StepsPane } from './steps-pane.tsx'
import { type Jump, TextPane } from './text-pane.tsx'
import { Tools } from './tools.tsx'
import { useWriting, type Writing } from './writing.ts'

/** From here on both ways in have room beside each other. */
const BOTH_PX = 1180

export function Bench({ kitchen, draft }: { kitchen: Kitchen; draft: ProtocolDraft }): preact.JSX.Element {
  const writing = useWriting(kitchen, draft)
  // What came from elsewhere came as a text, and its problems are told by their lines.
  const [way, setWay] = useState<'steps' | 'text'>(draft.cameAs === undefined ? 'steps' : 'text')
  const [jump, setJump] = useState<Jump | null>(null)
  const both = useWindow().width >= BOTH_PX
  const onLine = (line: number): void => {
    setWay('text')
    setJump({ line })
  }
  // What is typed as text is looked at before its rows are shown.
  const choose = (next: 'steps' | 'text'): void => {
    writing.lookNow()
    setJump(null)
    setWay(next)
  }
  const programme = useProgramme(writing.outline.protocol)
  useUndoKeys(writing)
  return (
    <div class="workshop">
      <Page title={writing.title} actions={<Pad onPress={() => kitchen.go('#/protocols')}>All protocols</Pad>}>
        <NotKept writing={writing} />
        <Moved kitchen={kitchen} writing={writing} />
        {writing.waiting.map((words) => (
          <Waiting key={JSON.stringify(words.edit)} words={words} writing={writing} />
        ))}
        {draft.cameAs === undefined ? null : <CameAs name={draft.cameAs} />}
        {both ? null : (
          <ChoiceRow
            legend="Written as"
            quiet
            choices={[
              { value: 'steps', label: 'Steps' },
              { value: 'text', label: 'Text' }
            ]}
            value={way}
            onChoose={choose}
          />
        )}
        <div class="workshop-panes">
          {both || way === 'steps' ? (
            <section class="workshop-pane" aria-labelledby="workshop-steps-title">
              <h2 id="workshop-steps-title" class={both ? undefined : 'unseen'}>
                Steps
              </h2>
              <StepsPane writing={writing} onLine={onLine} />
            </section>
          ) : null}
          {both || way === 'text' ? (
            <section class="workshop-pane workshop-pane-text" aria-labelledby="workshop-text-title">
              <h2 id="workshop-text-title" class={both ? undefined : 'unseen'}>
                Text
              </h2>
              <TextPane writing={writing} jump={jump} onLine={onLine} />
            </section>
          ) : null}
          <Live kitchen={kitchen} protocol={writing.outline.protocol} programme={programme} />
        </div>
        <Tools kitchen={kitchen} draft={draft} writing={writing} programme={programme} onProblem={onLine} />
      </Page>
    </div>
  )
}

function NotKept({ writing }: { writing: Writing }): preact.JSX.Element | null {
  const failed = writing.keeper.failed.value
  if (failed === null) return null
  return (
    <Strip tone="bad" urgent actions={<Pad onPress={writing.keeper.tryNow}>Try again</Pad>}>
      {`Not kept: ${failed}`}
    </Strip>
  )
}

function Moved({ kitchen, writing }: { kitchen: Kitchen; writing: Writing }): preact.JSX.Element | null {
  const id = writing.keeper.movedTo.value
  if (id === null) return null
  const open = (): void => kitchen.go(`#/protocols/write/${encodeURIComponent(id)}`)
  return (
    <Strip tone="warn" urgent actions={<Pad onPress={open}>Open it by itself</Pad>}>
      This draft was changed in another tab. Both are kept: what you write here is a draft of its own now.
    </Strip>
  )
}

/** Typed into a form while the text had a mistake: it stays here until it is put where it was meant for. */
function Waiting({ words, writing }: { words: WaitingWords; writing: Writing }): preact.JSX.Element {
  const [refused, setRefused] = useState<string | null>(null)
  const pads = (
    <>
      <Pad onPress={() => setRefused(writing.putIn(words))}>Put it in</Pad>
      <HoldPad look="plain" label={`Let “${words.typed}” go: press and hold`} onHeld={() => writing.letGo(words)}>
        <span>Let it go</span>
        <small>press and hold</small>
      </HoldPad>
    </>
  )
  return (
    <Strip tone="warn" actions={pads}>
      <p>{`Not in the text yet: “${words.typed}”, typed for ${words.at}, while the text had a mistake.`}</p>
      {refused === null ? null : <p>{refused}</p>}
    </Strip>
  )
}

/** What came from elsewhere, and what is odd about its name; its problems stand beneath its text. */
function CameAs({ name }: { name: string }): preact.JSX.Element {
  const ending = strangeEnding(name)
  const odd = ending === null ? '' : ` Its name ends in ${ending}, a protocol’s in .yaml: is it the right file?`
  return <p class="soft">{`From ${name}, not kept yet.${odd}`}</p>
}

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y) wherever the text area's own undo does not answer. */
function useUndoKeys(writing: Writing): void {
  useLayoutEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const key = event.key.toLowerCase()
      const isUndo = key === 'z' && !event.shiftKey
      const isRedo = (key === 'z' && event.shiftKey) || key === 'y'
      if (!(event.ctrlKey || event.metaKey) || event.altKey || !(isUndo || isRedo)) return
      if ((event.target as Element | null)?.id === 'workshop-text') return
      event.preventDefault()
      if (isUndo) writing.undo?.()
      else writing.redo?.()
    }
    document.addEventListener('keydown', press)
    return () => document.removeEventListener('keydown', press)
  })
}
