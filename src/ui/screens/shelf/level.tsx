// How much is left: said in words, and drawn as a measure. The words alone are enough.

import type { Units } from '../../../core/quantity/index.ts'
import type { Level } from '../../../core/shelf/levels.ts'
import type { Thing } from '../../../core/shelf/thing.ts'
import { unitOf } from '../../../core/shelf/thing.ts'
import { levelWords } from './words.ts'

type Props = { thing: Thing; level: Level | null; units: Units }

export function LevelMeasure({ thing, level, units }: Props): preact.JSX.Element | null {
  if (unitOf(thing) === null) return null
  if (level === null) return <span class="soft">How much is there was not told.</span>
  const { left, more } = levelWords(level, units)
  const share = (amount: number): string =>
    `${level.known > 0 ? Math.min(100, Math.max(0, (amount / level.known) * 100)) : 0}%`
  const wrong = level.left < 0 || level.free < 0
  return (
    <span class="shelf-level" data-wrong={wrong ? '' : undefined}>
      <span class="shelf-measure" aria-hidden="true">
        <span class="shelf-measure-kept" style={{ width: share(level.left) }} />
        <span class="shelf-measure-free" style={{ width: share(level.free) }} />
      </span>
      <span class="shelf-left">{left}</span>
      {more.map((line) => (
        <span key={line} class={wrong ? 'shelf-wrong' : 'soft'}>
          {line}
        </span>
      ))}
    </span>
  )
}
