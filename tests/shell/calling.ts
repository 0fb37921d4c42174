// A standing call, as the rungs are given it.
import type { Alert } from '../../src/core/pot/due.ts'
import type { RungAlert } from '../../src/shell/rung.ts'

export const call = (change: Partial<Alert> = {}, potId = 'plum'): RungAlert => ({
  potId,
  colourway: potId,
  alert: {
    key: 'call 1',
    kind: 'call',
    path: 'acid',
    atMs: 0,
    urgency: 'now',
    lateMs: 0,
    escalates: false,
    soft: false,
    ...change
  }
})
