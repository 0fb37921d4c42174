// A whistle as anybody would whistle it, for tests that ask what becomes of a whistle, not whether it is heard.
import type { WhistlePlan } from './whistle.ts'

export const plain: Omit<WhistlePlan, 'kind' | 'fromHz'> = {
  semitones: 8,
  glideSec: 0.4,
  headSec: 0.05,
  tailSec: 0.05,
  curve: 'straight',
  scoop: 0,
  wobble: { semitones: 0.05, hz: 5 },
  tremble: { share: 0.1, hz: 6 },
  attackSec: 0.04,
  releaseSec: 0.06,
  tiltDb: 0,
  breathDb: -18,
  secondDb: -35,
  room: { decaySec: 0.3, directDb: 8 }
}
