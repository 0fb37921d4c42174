// The part of evolve that walks the programme: steps started and closed, rounds, branches, moments.
import type { PotEvent } from './events.ts'
import type { Run } from './state.ts'

type Walk = Extract<
  PotEvent,
  {
    type:
      | 'StepStarted'
      | 'StepClosed'
      | 'Ended'
      | 'RoundStarted'
      | 'RoundsEnded'
      | 'ChoiceTaken'
      | 'MomentMarked'
      | 'DueMoved'
      | 'ConditionMet'
      | 'Looked'
  }
>

export function assignStep(run: Run, event: Walk, atMs: number): void {
  switch (event.type) {
    case 'StepStarted':
      run.counts.starts = (run.counts.starts ?? 0) + 1
      run.active.push({
        path: event.path,
        no: run.counts.starts,
        moves: 0,
        startedAtMs: atMs,
        dueAtMs: event.dueAtMs,
        // Entries from before waits told their own time apart have none: their due time stands for it.
        timeDueAtMs: event.timeDueAtMs === undefined ? event.dueAtMs : event.timeDueAtMs,
        lateAfterMs: event.lateAfterMs,
        carryMs: event.carryMs,
        absorbedMs: event.absorbedMs,
        side: event.side,
        remainingMs: null,
        notYetCount: 0,
        met: [],
        lookedAtMs: atMs,
        looks: 0
      })
      return
    case 'StepClosed':
      run.active = run.active.filter((a) => a.path !== event.path)
      end(run, event.path, atMs)
      return
    case 'Ended':
      end(run, event.path, atMs)
      return
    case 'RoundStarted':
      run.round[event.path] = event.round
      return
    case 'RoundsEnded':
      return
    case 'ChoiceTaken':
      run.taken[event.path] = event.answer
      return
    case 'MomentMarked':
      mark(run, event.name, atMs)
      return
    case 'DueMoved':
      run.active = run.active.map((a) =>
        a.path !== event.path
          ? a
          : {
              ...a,
              dueAtMs: event.dueAtMs,
              timeDueAtMs: event.timeDueAtMs === undefined ? event.dueAtMs : event.timeDueAtMs,
              lateAfterMs: event.lateAfterMs,
              remainingMs: event.remainingMs,
              moves: a.moves + 1,
              notYetCount: a.notYetCount + (event.why === 'not-yet' ? 1 : 0)
            }
      )
      return
    case 'ConditionMet':
      run.active = run.active.map((a) => (a.path === event.path ? { ...a, met: [...a.met, event.index] } : a))
      return
    case 'Looked':
      run.active = run.active.map((a) => (a.path === event.path ? { ...a, lookedAtMs: atMs, looks: a.looks + 1 } : a))
      return
  }
}

/** A closed step or ended construct is a moment by its id: the last part of its path. */
function end(run: Run, path: string, atMs: number): void {
  run.ended[path] = atMs
  mark(run, path.slice(path.lastIndexOf('/') + 1), atMs)
}

function mark(run: Run, name: string, atMs: number): void {
  run.moments[name] = atMs
  run.counts[`moment ${name}`] = (run.counts[`moment ${name}`] ?? 0) + 1
}
