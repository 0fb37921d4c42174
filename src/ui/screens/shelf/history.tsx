// All that happened to a thing, newest first; an old level stays beside the new one, with the reason.
import type { Units } from '../../../core/quantity/index.ts'
import type { Change, Mark, Shelved } from '../../../core/shelf/state.ts'
import { unitOf } from '../../../core/shelf/thing.ts'
import { clockOf, dayName } from '../../parts/day-name.ts'
import { amountWords } from './words.ts'

type Line = { atMs: number; say: string }

export function History({ item, units, nowMs }: { item: Shelved; units: Units; nowMs: number }): preact.JSX.Element {
  const unit = unitOf(item.thing) ?? 'mL'
  const lines: Line[] = [
    ...item.marks.map((mark) => ({
      atMs: mark.atMs,
      say: markWords(mark, (amount) => amountWords(amount, unit, units))
    })),
    ...item.changes.map((change) => ({ atMs: change.atMs, say: changeWords(change) }))
  ]
  if (item.status === 'away' && item.how === 'put away')
    lines.push({ atMs: item.awayAtMs, say: `Put away${why(item.why)}` })
  if (item.marks.length === 0) lines.push({ atMs: item.addedAtMs, say: 'Put on the shelf' })
  const newest = lines.toSorted((a, b) => b.atMs - a.atMs)
  return (
    <section class="shelf-part">
      <h2>What happened to it</h2>
      <ul class="shelf-history">
        {newest.map((line, i) => (
          <li key={`${line.atMs} ${i}`}>
            <span class="soft">{`${dayName(line.atMs, nowMs)}, ${clockOf(line.atMs)}`}</span>
            <span>{line.say}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function markWords({ kind, amount, was, why: reason }: Mark, say: (amount: number) => string): string {
  const before = was === null ? '' : `, was ${say(was)}`
  switch (kind) {
    case 'added':
      return `Put on the shelf with ${say(amount)}`
    case 'made':
      return `Made, ${say(amount)}`
    case 'corrected':
      return `Level corrected to ${say(amount)}${before}${why(reason)}`
    case 'refilled':
      return `${say(amount)} put in`
    case 'used-up':
      return `Used up${before}`
    case 'discarded':
      return `Thrown out${before}${why(reason)}`
  }
}

function changeWords({ was, now, why: reason }: Change): string {
  const before = was as unknown as Record<string, unknown>
  const after = now as unknown as Record<string, unknown>
  const fields = Object.keys(after).filter((field) => JSON.stringify(before[field]) !== JSON.stringify(after[field]))
  const told = fields.map((field) => `${names[field] ?? field} was ${shown(before[field])}, is ${shown(after[field])}`)
  return told.length === 0 ? `Label looked at${why(reason)}` : `Label changed: ${told.join('; ')}${why(reason)}`
}

const names: Record<string, string> = {
  percentWV: 'strength',
  percent: 'strength',
  densityGPerML: 'density',
  madeOn: 'made on',
  alkalinityMgPerL: 'alkalinity',
  source: 'source of the figure',
  treated: 'treatment',
  volumeML: 'size in mL',
  heat: 'heating'
}

function shown(value: unknown): string {
  return value === null || value === '' ? 'nothing' : `“${String(value)}”`
}

function why(reason: string): string {
  return reason === '' ? '' : `: ${reason}`
}
