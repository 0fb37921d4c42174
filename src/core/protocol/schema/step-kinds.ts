// The words of the language. The compiler names a word that has no definition here.
import type { StepWord } from '../model.ts'
import type { StepKind } from './step-kind.ts'
import { add } from './steps/add.ts'
import { air } from './steps/air.ts'
import { check } from './steps/check.ts'
import { cool } from './steps/cool.ts'
import { doing } from './steps/do.ts'
import { dry } from './steps/dry.ts'
import { enter } from './steps/enter.ts'
import { fill } from './steps/fill.ts'
import { heat } from './steps/heat.ts'
import { hold } from './steps/hold.ts'
import { lift } from './steps/lift.ts'
import { lower } from './steps/lower.ts'
import { measure } from './steps/measure.ts'
import { note } from './steps/note.ts'
import { photo } from './steps/photo.ts'
import { rinse } from './steps/rinse.ts'
import { sample } from './steps/sample.ts'
import { soak } from './steps/soak.ts'
import { spin } from './steps/spin.ts'
import { squeeze } from './steps/squeeze.ts'
import { transfer } from './steps/transfer.ts'
import { turn } from './steps/turn.ts'
import { wait } from './steps/wait.ts'

export const stepKinds: Record<StepWord, StepKind> = {
  soak,
  fill,
  add,
  enter,
  lift,
  lower,
  turn,
  heat,
  hold,
  cool,
  check,
  measure,
  sample,
  wait,
  transfer,
  rinse,
  squeeze,
  air,
  spin,
  dry,
  note,
  photo,
  do: doing
}
