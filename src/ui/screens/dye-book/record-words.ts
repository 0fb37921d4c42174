// A record in words, for the screen and for paper alike.
import { showDose, showDuration, showMass, type Units } from '../../../core/quantity/index.ts'
import { cupsWords } from '../../../core/record/cups-words.ts'
import { bathFates, fieldWords } from '../../../core/record/event-words.ts'
import { localClock } from '../../../core/record/local-time.ts'
import type { BatchRecord, Said } from '../../../core/record/record.ts'
import { general, rules } from '../../../core/safety/rules.ts'

export type SaidLine = { said: Said; words: string }

/** What was dyed, in what, by which method, by whom. */
export function headFacts({ identity, substrate, protocol }: BatchRecord, units: Units): string[] {
  const bath = `bath ${substrate.bath.number}${substrate.bath.unknownDyeLeft ? ', used before' : ''}`
  return [
    `Batch ${identity.batchName}`,
    `${substrate.fibre}, ${showMass(substrate.goodsMassG, units)}`,
    bath,
    protocol.title,
    identity.dyer ? `by ${identity.dyer}` : ''
  ].filter(Boolean)
}

export function statusLine({ identity, steps, offProtocol }: BatchRecord): string {
  const tz = steps.at(-1)?.said.tzOffsetMin ?? 0
  const off = offProtocol ? ' Off protocol.' : ''
  switch (identity.status) {
    case 'running':
      return `On the stove since ${localClock(identity.startedAtMs, tz)}.${off}`
    case 'held':
      return `Stopped, still dyeing.${off}`
    case 'complete': {
      const took = showDuration((identity.endedAtMs ?? identity.startedAtMs) - identity.startedAtMs)
      return `Done in ${took}. Bath ${bathFates[identity.bathFate ?? 'dropped']}.${off}`
    }
    case 'aborted':
      return `Ended early: ${identity.endedBecause}.${off}`
  }
}

/** What came late stands with the steps already. */
export function otherwiseLines({ deviations }: BatchRecord): SaidLine[] {
  return deviations.filter(({ kind }) => kind !== 'late').map(({ said, sentence }) => ({ said, words: sentence }))
}

export function readingLines({ readings, media }: BatchRecord): SaidLine[] {
  // A photo whose picture is kept stands with the pictures.
  const pictured = new Set(media.map(({ said }) => `${said.entry.writerId} ${said.entry.seq}`))
  const listed = readings.filter(({ said }) => !pictured.has(`${said.entry.writerId} ${said.entry.seq}`))
  return listed.map(({ said, words, inRange, label }) => ({
    said,
    words: `${words}${inRange === null ? '' : inRange ? ', in range' : ', outside its range'}${label === '' ? '' : ` (${label})`}`
  }))
}

export function judgedLines({ judgements }: BatchRecord): SaidLine[] {
  return judgements.map(({ said, of, grade, hue, cups }) => ({
    said,
    words: `${of}: ${grade}${hue === null || hue === '' ? '' : `, what is left is ${hue}`}${cups ? `; ${cupsWords(cups)}` : ''}`
  }))
}

export function noteLines({ notes }: BatchRecord): SaidLine[] {
  return notes.map(({ said, text }) => ({ said, words: text }))
}

export function correctionLines({ corrections }: BatchRecord): SaidLine[] {
  return corrections.map((correction) => ({
    said: correction.said,
    words: `${correction.what} Corrected ${fieldWords(correction.field)}: ${correction.was || 'nothing'} becomes ${correction.now || 'nothing'}. ${correction.why}${correction.applied ? '' : ' (could not be said anew)'}`
  }))
}

export function undoneLines({ withdrawn }: BatchRecord): SaidLine[] {
  return withdrawn.map(({ said, what }) => ({ said, words: what }))
}

export type GivenFact = { key: string; label: string; value: string; sum: string }

/** What was given at the start: skeins, burner, answers, and what was set out, with the sum that gave it. */
export function givenFacts({ substrate, identity, programme }: BatchRecord, units: Units): GivenFact[] {
  const skeins = substrate.skeins.map((skein) => `${skein.tag} ${showMass(skein.massG, units)}`).join(', ')
  return [
    { key: 'skeins', label: 'Skeins', value: skeins, sum: '' },
    { key: 'burner', label: 'Burner', value: identity.burner, sum: '' },
    ...programme.inputs.map(({ id, label, shown }) => ({ key: `input ${id}`, label, value: shown, sum: '' })),
    ...programme.setOut.map(({ id, label, amount, sum }) => ({
      key: `out ${id}`,
      label,
      value: `${showDose(amount, units)} of ${amount.of}`,
      sum
    }))
  ]
}

export function checkLines({ checks }: BatchRecord): string[] {
  if (checks.length === 0) return ['No checks were made.']
  return checks.map((check) => `${check.ok ? 'Ready' : 'Not ready'}: ${check.say}`)
}

export function cautionLine({ cautions }: BatchRecord): string {
  const titles = new Map([...rules, ...general].map((caution) => [caution.id, caution.title]))
  const shown = [...new Set(cautions.map((caution) => titles.get(caution.id) ?? caution.id.replace(/^own: /, '')))]
  return shown.length === 0 ? 'No caution was shown.' : `Cautions shown: ${shown.join(', ')}.`
}
