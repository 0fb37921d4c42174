// From the Start tap to the pot on the stove: problems first, then the checks, then the journal.
import { useRef, useState } from 'preact/hooks'
import type { Check } from '../../../core/pot/events.ts'
import type { InputProblem } from '../../../core/protocol/model.ts'
import type { KeptNumbers } from '../../../core/protocol/numbers/kept.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { dropDraft, type StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { fieldId, toField } from './field-id.ts'
import type { Worked } from './programme.ts'
import { benchCheck, startPot } from './start-pot.ts'

export type Filled = {
  draft: StartDraft
  worked: Worked
  cautions: readonly Caution[]
  /** As they were shown; null: there were none. */
  numbers: KeptNumbers | null
  things: readonly OnShelf[]
}

export type Starting = {
  /** Start was tapped: from then on problems stand at their fields. */
  asked: boolean
  busy: boolean
  /** The checks, while they wait for "all the same". */
  checks: Check[] | null
  failed: string | null
  press: () => Promise<void>
  begin: (checks: Check[]) => Promise<void>
  back: () => void
}

export function useStarting(kitchen: Kitchen, stored: StoredProtocol, filled: Filled): Starting {
  const { draft, worked, cautions, numbers, things } = filled
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  // Two taps before the next drawing would both find the pad alive.
  const running = useRef(false)
  const [checks, setChecks] = useState<Check[] | null>(null)
  const [failed, setFailed] = useState<string | null>(null)
  const { programme, inputs, problems } = worked

  const begin = async (given: Check[]): Promise<void> => {
    if (running.current || !programme) return
    running.current = true
    setBusy(true)
    const sent = await startPot(kitchen, { stored, draft, inputs, programme, cautions, numbers, things }, given)
    running.current = false
    setBusy(false)
    if (!sent.ok) {
      setFailed(sent.say)
      return
    }
    dropDraft(stored.id)
    if (kitchen.settings.peek().calendarAtStart) void kitchen.saveCalendar()
    kitchen.go('#/stove')
  }
  const press = async (): Promise<void> => {
    setAsked(true)
    setFailed(null)
    if (!programme || problems.length > 0) {
      focusFirst(problems)
      return
    }
    const bench = benchCheck(programme, draft.setOut)
    // Asked for inside the tap: without the gesture the browser gives no sound.
    const found = [...(await kitchen.beforeTheHeat()), ...(bench ? [bench] : [])]
    // How loud is loud enough only the fan at this stove can say: asked for once.
    const { sound, loudnessTried } = kitchen.settings.peek()
    if (found.every((check) => check.ok) && (loudnessTried || !sound)) await begin(found)
    else setChecks(found)
  }
  return { asked, busy, checks, failed, press, begin, back: () => setChecks(null) }
}

function focusFirst(problems: readonly InputProblem[]): void {
  for (const { field } of problems) {
    const id = fieldId(field)
    if (id === null || document.getElementById(id) === null) continue
    // The fields get their problems with the next drawing.
    requestAnimationFrame(() => toField(id))
    return
  }
}
