// What the one pad of a bath does, whether a knuckle, a key or a pedal presses it.
import type { PotCommand } from '../../../core/pot/commands.ts'
import { type Ask, calledBy } from './asks.ts'
import type { Pad } from './bath-view.ts'
import type { Call } from './calls.ts'
import type { Stage, Via } from './stage.ts'

export function pressPad(stage: Stage, potId: string, pad: Pad, via: Via = stage.hand.via): void {
  switch (pad.kind) {
    case 'ask':
      pressAsk(stage, potId, pad.ask, via)
      return
    case 'early':
      void stage.sendAll(potId, early(pad.waitPath, pad.path), via)
      return
    case 'read':
      stage.open.value = { kind: 'read', potId }
      return
    case 'deeds':
      stage.open.value = { kind: 'deeds', potId }
      return
    case 'note':
      stage.open.value = { kind: 'note', potId }
      return
    case 'resume':
      stage.open.value = { kind: 'resume', potId }
      return
    case 'settle':
      stage.open.value = { kind: 'trouble', potId }
      return
    case 'finish':
      stage.open.value = { kind: 'finish', potId }
      return
  }
}

/** The pad of a call. Where nothing is asked all steps are done and the heat is still on. */
export function pressCall(stage: Stage, { pot, alert }: Call, via: Via = stage.hand.via): void {
  const { ask } = calledBy(pot.state, alert)
  if (ask) pressAsk(stage, pot.potId, ask, via)
  else void stage.send(pot.potId, { type: 'ChangeHeat', on: false, level: null }, via)
}

export function pressAsk(stage: Stage, potId: string, ask: Ask, via: Via): void {
  switch (ask.kind) {
    case 'done':
      void stage.send(potId, { type: 'MarkDone', path: ask.path }, via)
      return
    case 'looked':
      void stage.send(potId, { type: 'MarkLooked', path: ask.path }, via)
      return
    case 'in':
      void stage.send(potId, { type: 'PutSkeinsIn', tags: stage.tagsOf(potId) }, via)
      return
    case 'question':
      stage.open.value = { kind: 'ask', potId, path: ask.path, question: ask.question }
      return
  }
}

/** The act came a little before its cue: the wait ends with it. */
function early(waitPath: string, path: string): PotCommand[] {
  return [
    { type: 'EndEarly', path: waitPath, reason: 'done with the act' },
    { type: 'MarkDone', path }
  ]
}
