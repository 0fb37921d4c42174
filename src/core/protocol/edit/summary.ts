// One line for a row of the list, in the words of the file.
import type { StepWord } from '../model.ts'
import { stepKinds } from '../schema/step-kinds.ts'
import { capital } from '../words.ts'
import { loopNames } from '../written.ts'
import { type Data, type Fields, isFields } from './data.ts'
import { isConstruct, listsInside, type Owner } from './places.ts'

/** A row is a glance, no reading matter. */
const lettersMost = 120

/** Any value on one line: a list with commas, fields as they are read out. */
export function words(data: Data | undefined): string {
  if (data === undefined || data === null) return ''
  if (Array.isArray(data)) return data.map(words).join(', ')
  if (!isFields(data)) return short(String(data))
  return short(
    Object.entries(data)
      .map(([key, value]) => `${key} ${words(value)}`)
      .join(', ')
  )
}

export function short(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim()
  return line.length > lettersMost ? `${line.slice(0, lettersMost - 1)}…` : line
}

/** Of a step or a construct. */
export function stepSummary({ kind, fields, short: main }: Owner): string {
  if (isConstruct(kind)) return short(constructSummary(kind, fields))
  if (!Object.hasOwn(stepKinds, kind)) return short(capital([kind, words(fields)].join(' ')))
  const own = Object.keys(stepKinds[kind as StepWord].fields).filter((name) => name !== main && name in fields)
  const rest = own.filter((name) => fields[name] !== false).map((name) => fieldWords(name, fields[name]))
  if (kind === 'check' && typeof fields.grade === 'string') return short(`Judge the ${fields.grade}`)
  const mainWords = main === null ? '' : mainOf(main, fields[main])
  // What a person is asked or told to do is a sentence of its own.
  if (mainWords !== '' && (main === 'say' || main === 'question')) return mainWords
  const first = mainWords === '' && rest.length > 0 ? ` ${rest.shift()}` : ` ${mainWords}`
  return short(`${capital(kind)}${first}${rest.map((one) => `, ${one}`).join('')}`)
}

function fieldWords(name: string, value: Data | undefined): string {
  return value === true ? name : `${name} ${words(value)}`
}

/** Heat to 85 °C, but heat off. */
function mainOf(main: string, value: Data | undefined): string {
  const said = words(value)
  return main !== 'to' || said === '' || said === 'off' ? said : `to ${said}`
}

/** A number of rounds, or the name of the input that gives it. */
function timesWords(times: Data | undefined): string {
  return typeof times === 'string' ? `as often as ${words(times)} says` : `${words(times)} times`
}

function constructSummary(kind: string, fields: Fields): string {
  const label = typeof fields.label === 'string' ? fields.label : null
  switch (kind) {
    case 'repeat':
      return label === null ? `Repeat ${timesWords(fields.times)}` : `${label}, ${timesWords(fields.times)}`
    case 'for each':
      return [label ?? 'For each', loopWords(fields)].join(label === null ? ' ' : ', each ')
    case 'until': {
      const most = `at most ${words(fields['at most'])} times`
      return `${label ?? `Until ${questionWords(fields.ask)}`}, ${most}`
    }
    case 'choice':
      return words(fields.ask) || label || 'Choice'
    default:
      return `${label ?? 'Alongside'}: ${listsInside(kind, fields).flat().join(', ')}`
  }
}

function loopWords(fields: Fields): string {
  const name = loopNames.find((one) => Object.hasOwn(fields, one))
  if (name === undefined) return ''
  const items = fields[name]
  if (isFields(items)) return `${name} ${words(items.from)} to ${words(items.to)}`
  return `${name} ${words(items)}`
}

function questionWords(ask: Data | undefined): string {
  if (!isFields(ask)) return words(ask)
  if (ask.grade !== undefined) return `the ${words(ask.grade)} is ${words(ask.enough)}`
  if (ask.question !== undefined) return words(ask.question)
  return words(ask)
}

export function inputSummary(name: string, fields: Fields): string {
  const usual = fields.default === undefined ? '' : `, usually ${words(fields.default)}`
  return short(`${words(fields.ask) || name}${usual}`)
}

export function materialSummary(name: string, fields: Fields): string {
  const { label, kind, strength, amount } = fields
  const title = label === undefined ? name : `${name}, ${words(label)}`
  return short([title, words(kind), words(strength), words(amount)].filter((one) => one !== '').join(', '))
}

export function gapSummary(fields: Fields): string {
  const limits = (['at least', 'at most'] as const).filter((limit) => fields[limit] !== undefined)
  const said = limits.map((limit) => `, ${limit} ${words(fields[limit])}`).join('')
  return short(`${words(fields.from)} to ${words(fields.to)}${said}`)
}
