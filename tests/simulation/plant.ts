// Where a planted bug takes hold: the functions of the engine and the session that a test can put a false one before.
import type { ladder } from '../../src/app/ladder.ts'
import type { afterRoundAsk } from '../../src/core/pot/advance.ts'
import type { alertsDue } from '../../src/core/pot/alerts-due.ts'
import type { decide } from '../../src/core/pot/decide.ts'
import type { evolveDraft } from '../../src/core/pot/evolve.ts'
import type { fold } from '../../src/core/pot/fold.ts'
import type { nextDue } from '../../src/core/pot/next-due.ts'
import type { timingOf } from '../../src/core/pot/timing.ts'
import type { passMoments } from '../../src/session/pass-moments.ts'
import type { writeAhead } from '../../src/session/write-ahead.ts'

type Places = {
  afterRoundAsk: typeof afterRoundAsk
  alertsDue: typeof alertsDue
  decide: typeof decide
  /** Also in the place of `evolve`, which does the same to a copy. */
  evolve: typeof evolveDraft
  fold: typeof fold
  ladder: typeof ladder
  nextDue: typeof nextDue
  passMoments: typeof passMoments
  timingOf: typeof timingOf
  writeAhead: typeof writeAhead
}

/** From the honest function to the false one. */
export type Plant = { [Place in keyof Places]?: (honest: Places[Place]) => Places[Place] }

let planted: Plant = {}

export function setPlant(plant: Plant): void {
  planted = plant
}

// biome-ignore lint/suspicious/noExplicitAny: a function of any shape is wrapped and keeps its own type
export function open<F extends (...given: any[]) => any>(place: keyof Places, honest: F): F {
  const through = (...given: Parameters<F>): ReturnType<F> => {
    const plant = planted[place] as ((honest: F) => F) | undefined
    return plant === undefined ? honest(...given) : plant(honest)(...given)
  }
  return through as F
}
