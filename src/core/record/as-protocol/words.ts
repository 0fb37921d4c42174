// A step of a programme, or a told deed, as the word and fields that make it again.
import type { Answer, DeedWord } from '../../pot/events.ts'
import type { Question, Step } from '../../protocol/model.ts'
import { readDepth, showDuration, showPart } from '../../quantity/index.ts'
import { clean, type Fields, step, type Value, type Written } from './text.ts'

/** Soaking, airing and drying begin with an act of their own, which the word of the wait brings along. */
export type Rest = 'soak' | 'air' | 'dry'

export type Act = { written: Written; rest: Rest | null; restFields: Fields }

export function tempText(tempC: number): string {
  return `${(Math.round(tempC * 10) / 10).toString()} °C`
}

export function rangeText({ lowC, highC }: { lowC: number | null; highC: number | null }): string | null {
  if (lowC === null) return highC === null ? null : `at most ${tempText(highC)}`
  if (highC === null) return `at least ${tempText(lowC)}`
  return lowC === highC ? tempText(lowC) : `${Math.round(lowC * 10) / 10}..${tempText(highC)}`
}

/** A length of time as the language writes it. */
export function timeText(ms: number): string {
  return showDuration(ms).replaceAll('\u00a0', ' ')
}

const plain = (written: Written): Act => ({ written, rest: null, restFields: {} })

/** An act of the programme; null: the word that follows it brings it along (turning the ring up). */
export function actOf(one: Step, side: boolean): Act | null {
  const more = sharedOf(one)
  const { word, call } = one
  if (one.heat === 'off') return plain(step('heat', { to: 'off', ...usual(call, 'Heat off'), ...more }, 'to'))
  if (word === 'heat') {
    return side ? plain(step('do', { say: clean(call, 80, 'Heat up'), ...more }, 'say')) : null
  }
  if (word === 'soak' || word === 'air' || word === 'dry') return restingOf(word, call, more)
  return plain(actStep(one, more))
}

function restingOf(word: Rest, call: string, more: Fields): Act {
  const where = /^Skein into the (.{1,40})$/.exec(call)?.[1]
  const inside: Fields = word === 'soak' && where !== undefined && where !== 'soak' ? { in: clean(where, 40) } : {}
  const alone =
    word === 'soak'
      ? step('do', { say: clean(call, 80, 'Into the soak'), ...more }, 'say')
      : step('lift', { to: word === 'air' ? 'the air' : 'dry', call: clean(call, 60, 'Out'), ...more })
  return { written: alone, rest: word, restFields: { ...inside, ...more } }
}

function actStep(one: Step, more: Fields): Written {
  const { word, call, yarn, depth } = one
  const out: Fields = one.outOfBathMostMs === null ? {} : { 'out of bath': `at most ${timeText(one.outOfBathMostMs)}` }
  switch (word) {
    case 'lift':
      if (depth !== null && depth.fraction > 0) return lowerTo(depth.fraction, call, more)
      return said('lift', 'to', 40, /^Lift to (.+)$/, 'the rod', call, { ...out, ...more })
    case 'lower':
      return depth ? lowerTo(depth.fraction, call, more) : doIt(call, more)
    case 'enter':
      return said('enter', 'what', 30, /^Enter (?!.* into )(.+)$/, 'the skein', call, more)
    case 'turn':
      return said('turn', 'what', 30, /^Turn (.+)$/, 'the skein', call, more)
    case 'sample':
      return said('sample', 'what', 40, /^Sample (.+)$/, 'the bath', call, more)
    case 'photo':
      return said('photo', 'what', 60, /^Photo: (.+)$/, 'skein with its tag', call, more)
    case 'transfer': {
      const to = /^Move to (.{1,40})$/.exec(call)?.[1]
      return step(
        'transfer',
        to ? { to: clean(to, 40, 'another vessel'), ...more } : { to: 'another vessel', ...callOf(call), ...more },
        'to'
      )
    }
    case 'rinse':
      return step('rinse', { ...rinseAt(one), ...more }, 'at')
    case 'squeeze':
      return step('squeeze', { ...usual(call, 'Squeeze, do not wring'), ...more })
    case 'spin':
      return step('spin', { ...usual(call, 'Spin'), ...more })
    case 'add':
      if (yarn === 'out') return said('lift', 'to', 40, /^Lift to (.+)$/, 'the rod', call, { ...out, ...more })
      return yarn === 'in' ? step('enter', { ...callOf(call), ...more }) : doIt(call, more)
    case 'note':
      return step('note', { say: clean(call, 80, 'Write it down'), ...more }, 'say')
    case 'fill':
    case 'heat':
    case 'hold':
    case 'cool':
    case 'check':
    case 'measure':
    case 'wait':
    case 'soak':
    case 'air':
    case 'dry':
    case 'do':
      return doIt(call, more)
  }
}

function rinseAt({ call, detail }: Step): Fields {
  const at = /^at (.+)$/.exec(detail ?? '')?.[1]
  return { ...(at === undefined ? {} : { at: clean(at, 64) }), ...usual(call, 'Rinse') }
}

/** `word: what`, where the call is the usual one; else the call in its own words. */
function said(
  word: string,
  field: string,
  most: number,
  pattern: RegExp,
  usually: string,
  call: string,
  more: Fields
): Written {
  const what = pattern.exec(call)?.[1]
  if (what === undefined || what.length > most) return step(word, { ...callOf(call), ...more })
  if (what === usually) return step(word, more)
  return step(word, { [field]: clean(what, most, usually), ...more }, field)
}

function doIt(call: string, more: Fields): Written {
  return step('do', { say: clean(call, 80, 'Done'), ...more }, 'say')
}

function callOf(call: string): Fields {
  const own = clean(call, 60)
  return own === '' ? {} : { call: own }
}

function usual(call: string, words: string): Fields {
  return call === words ? {} : callOf(call)
}

function lowerTo(fraction: number, call: string, more: Fields): Written {
  const to = partText(fraction)
  return step('lower', { to, ...usual(call, `Lower to ${to}`), ...more }, 'to')
}

export function partText(fraction: number): string {
  return `${showPart(Math.min(1, Math.max(0, fraction))).replaceAll('\u00a0', ' ')} of the skein`
}

/** What any act may have: forbidden things, cautions, records that close it. */
function sharedOf({ forbids, cautions, records, soft, word, detail }: Step): Fields {
  const fields: Record<string, Value> = {}
  if (soft && word !== 'turn') fields.soft = true
  if (word === 'do' && detail) fields.detail = clean(detail, 160)
  if (forbids.length > 0) fields.forbid = forbids.slice(0, 8).map((one) => clean(one, 40, 'stir'))
  if (records.length > 0) fields.record = records
  if (cautions.length > 0) fields.caution = cautions.slice(0, 8).map((one) => clean(one, 200, 'Take care.'))
  return fields
}

/** What a wait keeps of the step that covered it. */
export function waitFieldsOf(one: Step | null, word: string, ms: number): Fields {
  const fields: Record<string, Value> = { for: timeText(ms) }
  if (one === null) return fields
  const at = one.setPoint && (word === 'hold' || word === 'soak') ? rangeText(one.setPoint) : null
  if (at !== null) fields.at = at
  const looks = word === 'hold' || word === 'cool'
  if (looks && !one.open && one.lookEveryMs !== null && one.lookEveryMs < ms)
    fields['look every'] = timeText(one.lookEveryMs)
  if (one.forbids.length > 0) fields.forbid = one.forbids.slice(0, 8).map((each) => clean(each, 40, 'stir'))
  return fields
}

/** A question asked again. */
export function askOf(one: Step, question: Question): Written {
  switch (question.kind) {
    case 'grade':
      if (one.word === 'note') return step('note', { record: 'residue' })
      return step('check', { grade: clean(question.of, 40, 'bath') })
    case 'temperature': {
      const range = rangeText(question)
      return range === null ? step('measure', { what: 'temperature' }, 'what') : step('check', { temperature: range })
    }
    case 'ph': {
      const range = phText(question)
      return range === null ? step('measure', { what: 'pH' }, 'what') : step('check', { ph: range })
    }
    case 'number':
      return step(
        'measure',
        {
          what: clean(question.ask, 40, 'amount'),
          ...(clean(question.unit, 10) === '' ? {} : { unit: clean(question.unit, 10) }),
          ...(question.low === null ? {} : { least: question.low }),
          ...(question.high === null ? {} : { most: question.high })
        },
        'what'
      )
    case 'choice': {
      const answers = question.answers.slice(0, 6).map(({ label }) => clean(label, 30, 'this'))
      const ask = clean(question.ask, 80, 'Is it so?')
      return step('check', answers.length < 2 ? { question: ask } : { question: ask, answers })
    }
    case 'text':
      return step('note', { say: clean(question.ask, 80, 'Write a note') }, 'say')
  }
}

function phText({ low, high }: { low: number | null; high: number | null }): string | null {
  if (low === null) return high === null ? null : `at most ${high}`
  return high === null ? `at least ${low}` : `${low}..${high}`
}

/** The answer that was given, for a comment. */
export function answerText(answer: Answer): string {
  switch (answer.kind) {
    case 'temperature':
      return tempText(answer.tempC)
    case 'ph':
      if (answer.reading.kind === 'unreadable') return 'pH could not be read'
      return answer.reading.kind === 'value'
        ? `pH ${answer.reading.ph}`
        : `pH between ${answer.reading.low} and ${answer.reading.high}`
    case 'grade':
      return answer.hue === null ? answer.grade : `${answer.grade}, ${answer.hue}`
    case 'choice':
      return answer.answer
    case 'number':
      return `${answer.value} ${answer.unit}`.trim()
    case 'text':
      return answer.text
  }
}

/** A deed told at a free pot, or beside the route. */
export function deedOf(word: DeedWord, say: string): Act {
  const more = callOf(say)
  switch (word) {
    case 'lift':
      return plain(step('lift', say === '' ? {} : { to: clean(say, 40) }, 'to'))
    case 'lower': {
      const depth = readDepth(say)
      // A length needs to know how long the skein hangs, which nobody told: the words stand as they are.
      if (!depth.ok || depth.value.kind === 'length')
        return plain(step('do', { say: clean(`Lower to ${say}`, 80) }, 'say'))
      return plain(step('lower', { to: partText(depth.value.value) }, 'to'))
    }
    case 'air':
      return restingOf('air', 'Out, into the air', {})
    case 'do':
      return plain(step('do', { say: clean(say, 80, 'Done'), ...(/^stir\b/i.test(say) ? { soft: true } : {}) }, 'say'))
    case 'turn':
    case 'rinse':
    case 'squeeze':
    case 'spin':
      return plain(step(word, say === '' ? {} : more))
  }
}
