// The protocol as its text, with every problem of it beneath, each leading to its line.
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import type { Outline } from '../../../core/protocol/edit/rows.ts'
import type { Problem } from '../../../core/protocol/model.ts'
import { Pad } from '../../parts/pad.tsx'
import { sayOf } from './where.ts'
import type { Writing } from './writing.ts'

/** A line to go to. A new object each time: the same line may be asked for twice. */
export type Jump = { line: number }

type Props = { writing: Writing; jump: Jump | null; onLine: (line: number) => void }

/** More than this are counted, not listed: nobody reads on. */
const LISTED_MOST = 100

export function TextPane({ writing, jump, onLine }: Props): preact.JSX.Element {
  const area = useRef<HTMLTextAreaElement>(null)
  const text = useRef(writing.text)
  text.current = writing.text
  const bring = (): void => {
    if (area.current && area.current.value !== text.current) area.current.value = text.current
  }
  useLayoutEffect(bring, [])
  // A letter typed into a form is answered there first: to lay out all lines anew would take as long again.
  useEffect(bring, [writing.text])
  useEffect(() => {
    if (jump && area.current) goToLine(area.current, jump.line)
  }, [jump])
  const problems = problemsIn(writing.outline)
  const listed = problems.slice(0, LISTED_MOST)
  return (
    <div class="workshop-text">
      <label for="workshop-text" class="unseen">
        The text of the protocol
      </label>
      <textarea
        ref={area}
        id="workshop-text"
        // Who begins to write here writes on from what stands.
        onFocus={bring}
        wrap="off"
        spellcheck={false}
        autocomplete="off"
        autocapitalize="off"
        aria-describedby="workshop-problems"
        onInput={(event) => writing.type(event.currentTarget.value)}
        onBlur={() => writing.lookNow()}
      />
      <section id="workshop-problems" aria-label="Problems" aria-busy={writing.isBehind}>
        <p role="status">{countOf(problems.length)}</p>
        {listed.length === 0 ? null : (
          <ol class="workshop-problems">
            {listed.map((problem, i) => (
              <li key={i}>
                <Pad onPress={() => onLine(problem.line)}>
                  <strong>{`Line ${problem.line}, column ${problem.column}`}</strong>
                  <span>{sayOf(problem)}</span>
                </Pad>
              </li>
            ))}
          </ol>
        )}
        {problems.length > listed.length ? <p>{`And ${problems.length - listed.length} more.`}</p> : null}
      </section>
    </div>
  )
}

export function problemsIn({ rows, problems }: Outline): Problem[] {
  const all = [...problems, ...rows.flatMap((row) => row.problems)]
  return all.sort((a, b) => a.line - b.line || a.column - b.column)
}

export function countOf(problems: number): string {
  if (problems === 0) return 'No problems.'
  return problems === 1 ? 'One problem:' : `${problems} problems:`
}

/** Selects the line and brings it into sight: a text area has no other way to point. */
function goToLine(area: HTMLTextAreaElement, line: number): void {
  const lines = area.value.split('\n')
  const before = lines.slice(0, line - 1)
  const from = before.reduce((sum, one) => sum + one.length + 1, 0)
  area.focus()
  area.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0))
  const height = Number.parseFloat(getComputedStyle(area).lineHeight)
  if (Number.isFinite(height)) area.scrollTop = Math.max(0, (line - 3) * height)
}
