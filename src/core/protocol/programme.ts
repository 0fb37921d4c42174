// A protocol made concrete for one pot: loops written out, amounts worked out, times expected.
import { usualCoolingPerMin } from './cooling.ts'
import type { InputProblem, Programme, ProgrammeInputs, Protocol } from './model.ts'
import { momentNames } from './names.ts'
import { countAll } from './programme/count-all.ts'
import { estimateOf } from './programme/estimate.ts'
import type { Expected } from './programme/expect.ts'
import { liquorsOf, setOutOf } from './programme/portions.ts'
import { type Setting, settingOf } from './programme/setting.ts'
import { type Around, Unroll } from './programme/unroll.ts'
import { knownScope } from './scope.ts'
import { longestDays, longestMs } from './source/limits.ts'

export type ProgrammeMade = { ok: true; programme: Programme } | { ok: false; problems: InputProblem[] }

/** Turns a protocol and what the dyer gives into a programme. Masses in g, volumes in mL, temperatures in °C, times in
 * ms. Refuses with every problem at once, each at its field; never throws. */
export function programmeOf(protocol: Protocol, inputs: ProgrammeInputs): ProgrammeMade {
  const problems: InputProblem[] = []
  const setting = settingOf(protocol, inputs, problems)
  if (problems.length > 0) return { ok: false, problems }
  const names = momentNames(protocol.steps)
  const now: Expected = {
    nowMs: 0,
    bathC: protocol.startC,
    heatOn: false,
    askedC: null,
    roomC: setting.roomC,
    moments: new Map()
  }
  const unroll = new Unroll(setting, names, now, problems)
  const steps = unroll.sequence(protocol.steps, '', aroundAll(protocol, setting, names))
  const setOut = setOutOf(unroll.portions, setting, protocol.liquorRatio, problems)
  if (problems.length > 0) return { ok: false, problems }
  const { liquorML } = liquorsOf(unroll.portions, setting, protocol.liquorRatio).pot
  const programme: Programme = {
    title: protocol.title,
    steps,
    gaps: protocol.gaps,
    setOut,
    estimate: estimateOf(steps),
    late: protocol.late,
    goodsMassG: setting.goodsMassG,
    liquorML,
    liquorRatio: liquorML === null ? null : Math.round((liquorML / setting.goodsMassG) * 100) / 100,
    roomC: setting.roomC,
    coolingPerMin: usualCoolingPerMin,
    inputs: setting.inputs,
    cautions: protocol.cautions,
    given: inputs
  }
  if (inputs.countAll === true) countAll(programme, inputs, problems)
  if (problems.length > 0) return { ok: false, problems }
  const long = tooLong(programme)
  return long ? { ok: false, problems: [long] } : { ok: true, programme }
}

/** Looked at for every pot and not only for the file: an answer can make a short wait a long one. */
function tooLong({ estimate }: Programme): InputProblem | null {
  if (estimate.clock.mostMs <= longestMs) return null
  const days = Math.round((estimate.clock.mostMs / longestMs) * longestDays)
  const what = `It may take ${days} days.`
  return {
    code: 'lasts-too-long',
    field: 'steps',
    what,
    instead: `Keep it to ${longestDays} days: shorter waits or loops.`
  }
}

function aroundAll(protocol: Protocol, setting: Setting, moments: ReadonlySet<string>): Around {
  const scope = knownScope({
    kitchen: protocol.kitchen,
    quantities: setting.quantities,
    shown: setting.shown,
    loops: [],
    materials: protocol.materials,
    moments,
    startC: protocol.startC,
    boilC: setting.boilC,
    lengthen: setting.lengthen,
    liquorRatio: protocol.liquorRatio
  })
  return { scope, vessel: null, massG: setting.goodsMassG, ifWanted: false }
}
