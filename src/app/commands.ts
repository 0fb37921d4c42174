// Commands go to the session of this tab, or, where another tab owns, over to that one.
import type { PotCommand } from '../core/pot/commands.ts'
import type { Outcome, SendOptions, Session } from '../session/types.ts'
import type { Ownership } from '../shell/ownership/ownership.ts'
import type { Tabs } from '../shell/ownership/tabs.ts'
import type { Sent } from '../ui/kitchen.ts'

type Part = { potId: string; command: PotCommand }
type Ask = { parts: Part[]; options: SendOptions }

export type Commands = { send(parts: Part[], options: SendOptions): Promise<Sent> }

export function commands(session: Session, owner: Ownership, tabs: Tabs, newId: () => string): Commands {
  tabs.onWord((word) => {
    if (word.kind !== 'ask' || !owner.owns() || Date.now() > word.untilMs) return
    const { parts, options } = word.ask as Ask
    void sendHere(session, parts, options).then((answer) => tabs.say({ kind: 'answer', askId: word.askId, answer }))
  })
  return {
    async send(parts, options) {
      // The id is made here, so that an act asked twice, or asked and then done here, is one act.
      const named = { ...options, commandId: options.commandId ?? newId() }
      if (owner.owns()) return sendHere(session, parts, named)
      const answer = await tabs.ask(newId(), { parts, options: named } satisfies Ask)
      return (answer as Sent | null) ?? silent
    }
  }
}

const silent: Sent = {
  ok: false,
  refusal: null,
  say: 'The tab that runs the pots does not answer. Choose "work here" and see whether this was taken.'
}

async function sendHere(session: Session, parts: Part[], options: SendOptions): Promise<Sent> {
  const [first, second] = parts
  if (first === undefined) return { ok: true }
  try {
    const outcome =
      second === undefined
        ? await session.send(first.potId, first.command, options)
        : await session.sendBoth(first, second, options)
    return sentOf(outcome)
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return { ok: false, refusal: null, say: `Something in Strandline broke (${why}). Write it down by hand.` }
  }
}

function sentOf(outcome: Outcome): Sent {
  if (outcome.ok) return { ok: true }
  switch (outcome.why) {
    case 'refused':
      return { ok: false, refusal: outcome.refusal, say: outcome.refusal.say }
    case 'not-saved':
      return { ok: false, refusal: null, say: `Not saved. ${sayOf(outcome.failure)}` }
    case 'read-only':
      return { ok: false, refusal: null, say: outcome.say }
    case 'not-owner':
      return silent
  }
}

export function sayOf(failure: Extract<Outcome, { why: 'not-saved' }>['failure']): string {
  return failure.why === 'conflict' ? 'Another tab keeps writing to the same pot. Close it.' : failure.say
}
