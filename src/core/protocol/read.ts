// From a protocol's text to a protocol, or to all of its problems at once.
import { flowProblems } from './check/flow.ts'
import { nameProblems } from './check/names.ts'
import { countSteps } from './check/size.ts'
import type { Problem, Protocol } from './model.ts'
import { momentNames } from './names.ts'
import { foundSound, soundAsBefore } from './programme/sound.ts'
import { trialProgramme } from './programme/trial.ts'
import { type Tried, tryOut } from './read/drafts.ts'
import { readHeader, trialScope } from './read/header.ts'
import { Problems } from './read/problems.ts'
import { readSequence, type Steps } from './read/steps.ts'
import { entryOf, type Located, placeAt } from './source/located.ts'
import { readSource } from './source/read-source.ts'

export type ProtocolRead = { ok: true; protocol: Protocol } | { ok: false; problems: Problem[] }

/** Reads untrusted text as a protocol. Never throws; bounded in size, depth, steps and length before the costly parts.
 * Lines and columns count from 1. */
export function readProtocol(text: string): ProtocolRead {
  const source = readSource(text)
  return source.ok ? readLocated(source.root) : { ok: false, problems: source.problems }
}

/** The same for a text that was taken apart already, without problems. */
export function readLocated(root: Located): ProtocolRead {
  const problems = new Problems()
  const protocol = readRoot(root, problems)
  return problems.list.length > 0 ? { ok: false, problems: problems.sorted() } : { ok: true, protocol }
}

function readRoot(root: Located, problems: Problems): Protocol {
  const { header, whole } = readHeader(root, problems)
  const steps: Steps = { problems, places: new Map(), whole: true }
  const nodes = readSequence(entryOf(root, 'steps')?.value ?? null, 'steps', steps)
  const protocol: Protocol = { ...header, steps: nodes }
  // Nothing that is looked at from here on has changed.
  if (steps.whole && soundAsBefore(protocol)) return protocol
  const names = momentNames(nodes)
  nameProblems(nodes, steps)
  const tried: Tried = { drafts: new Map(), rounds: new Map() }
  // Counted before anything is tried out: loops in loops multiply.
  if (!countSteps(nodes, header, steps)) return protocol
  tryOut(nodes, trialScope(header, names), steps, tried)
  // With a step left out, nearly everything that looks at the whole would be a false alarm.
  if (steps.whole) flowProblems(nodes, header, names, tried, steps, root)
  if (whole && problems.list.length === 0) tryProgramme(protocol, root, problems)
  return protocol
}

/** The whole, worked out once with the defaults: what shows only then. */
function tryProgramme(protocol: Protocol, root: Located, problems: Problems): void {
  const made = trialProgramme(protocol)
  const at = placeAt(root, ['steps'])
  if (made.ok) foundSound(protocol, made.programme)
  else for (const { code, field, what, instead } of made.problems) problems.say(at, field, code as never, what, instead)
}
