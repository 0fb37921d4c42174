// The questions of a protocol: what is typed becomes a value in canonical units, and a value becomes text again.
import {
  type KitchenCountry,
  metricUnits,
  type Read,
  readDuration,
  readMass,
  readNumber,
  readPercent,
  readTemperature,
  readVolume,
  showDuration,
  showMass,
  showNumber,
  showPercent,
  showTemperature,
  showVolume
} from '../quantity/index.ts'
import type { Input, InputKind, InputProblem, Protocol } from './model.ts'

/** The questions for the form of a new pot, in their order. */
export function questionsOf(protocol: Protocol): Input[] {
  return protocol.inputs
}

export type InputRead = { ok: true; value: number | string; shown: string } | { ok: false; problem: InputProblem }

/** Reads what the dyer typed, or a canonical value (g, mL, °C, ms, %), and holds it against the input's limits. */
export function checkInput(input: Input, typed: string | number, kitchen: KitchenCountry | null = null): InputRead {
  const refuse = (code: string, what: string, instead: string): InputRead => ({
    ok: false,
    problem: { code, field: input.id, what, instead }
  })
  const read = typeof typed === 'number' ? canonical(input.kind, typed) : readValue(input.kind, typed, kitchen)
  if (!read.ok) {
    const { code, found, instead } = read.problem
    return refuse(code, found === '' ? `${input.ask} has no answer.` : `"${found}" can't be read.`, instead)
  }
  const { value } = read
  if (typeof value === 'string') {
    if (input.kind !== 'choice' || input.choices.includes(value)) return { ok: true, value, shown: value }
    return refuse('not-a-choice', `"${value}" is not among the choices.`, `Choose ${input.choices.join(', ')}.`)
  }
  const { least, most } = input
  if ((least !== null && value < least) || (most !== null && value > most)) {
    const limits = [
      least === null ? null : `at least ${showValue(input.kind, least)}`,
      most === null ? null : `at most ${showValue(input.kind, most)}`
    ]
    const within = limits.filter((limit) => limit !== null).join(' and ')
    return refuse('value-outside', `${showValue(input.kind, value)} is outside the limits.`, `Give ${within}.`)
  }
  return { ok: true, value, shown: showValue(input.kind, value) }
}

function canonical(kind: InputKind, value: number): Read<number | string> {
  if (kind === 'choice' || kind === 'text') return { ok: true, value: String(value) }
  if (kind === 'count') return readValue(kind, plainNumber(value), null)
  return readNumber(plainNumber(value))
}

export function readValue(kind: InputKind, typed: string, kitchen: KitchenCountry | null): Read<number | string> {
  switch (kind) {
    case 'number':
      return readNumber(typed)
    case 'count': {
      const read = readNumber(typed, { least: 0, most: 1000 })
      if (!read.ok || Number.isInteger(read.value)) return read
      const instead = `Write a whole number, for example ${Math.round(read.value)}.`
      return { ok: false, problem: { code: 'not-a-number', found: typed, instead } }
    }
    case 'mass':
      return readMass(typed)
    case 'volume':
      return readVolume(typed, { kitchen })
    case 'temperature': {
      const read = readTemperature(typed)
      return read.ok ? { ok: true, value: read.value.tempC } : read
    }
    case 'time': {
      const read = readDuration(typed)
      return read.ok ? { ok: true, value: read.value.highMs ?? read.value.lowMs } : read
    }
    case 'percent':
      return readPercent(typed)
    case 'choice':
    case 'text': {
      const text = typed.trim().slice(0, 80)
      if (text !== '') return { ok: true, value: text }
      return { ok: false, problem: { code: 'empty', found: '', instead: 'Write an answer.' } }
    }
  }
}

/** A value as a person reads it, in metric units. */
export function showValue(kind: InputKind, value: number | string): string {
  if (typeof value === 'string') return value
  switch (kind) {
    case 'number':
    case 'count':
    case 'choice':
    case 'text':
      return showNumber(value, 3, metricUnits)
    case 'mass':
      return showMass(value, metricUnits)
    case 'volume':
      return showVolume(value, metricUnits)
    case 'temperature':
      return showTemperature(value, metricUnits)
    case 'time':
      return showDuration(value)
    case 'percent':
      return showPercent(value, metricUnits)
  }
}

/** A value as text that a quantity is read from again: "1800 s", "2 %". Rounded to a millionth. */
export function quantityText(kind: InputKind, value: number | string): string {
  if (typeof value === 'string') return value
  const number = plainNumber(kind === 'time' ? value / 1000 : value)
  const unit = { number: '', count: '', mass: ' g', volume: ' mL', temperature: ' °C', time: ' s', percent: ' %' }
  return kind === 'choice' || kind === 'text' ? number : `${number}${unit[kind]}`
}

/** A number without an exponent. */
export function plainNumber(value: number): string {
  return Number(value.toFixed(6)).toString().includes('e') ? value.toFixed(6) : String(Number(value.toFixed(6)))
}

/** What an input holds while nobody has answered: its default, else something within its limits. */
export function trialValue(input: Input): number | string {
  if (input.default !== null) return input.default
  if (input.kind === 'choice') return input.choices[0] ?? 'choice'
  if (input.kind === 'text') return 'text'
  return input.least ?? Math.min(1, input.most ?? 1)
}
