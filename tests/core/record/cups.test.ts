import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import type { CupsRead } from '../../../src/core/pot/events.ts'
import { compareRecords } from '../../../src/core/record/compare.ts'
import { cupsWords } from '../../../src/core/record/cups-words.ts'
import { exportRecord } from '../../../src/core/record/export-record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { mossRun } from './moss.ts'

const ladder = [100, 50, 25, 12, 6, 3, 0]
const judgedBeside = (cups: CupsRead) => {
  const bench = mossRun()
  bench.do({ type: 'Judge', of: 'bath', grade: 'tint', hue: 'red', cups })
  return bench
}
function recordFrom(bench: ReturnType<typeof mossRun>) {
  const record = recordOf(bench.entries)
  if (!record) throw new Error('no record')
  return record
}

describe('what a bath was like beside cups, in words', () => {
  it.each([
    ['a cup', [12], 'like the cup of 12 % of the start liquor (6 to 25 % left)'],
    ['the start liquor itself', [100], 'like the cup of 100 % of the start liquor (50 to 100 % left)'],
    ['water', [0], 'like the cup of 0 % of the start liquor (0 to 3 % left)'],
    ['between two', [25, 12], 'between the cups of 25 and 12 % of the start liquor']
  ])('is no more exact than the rungs: %s', (_, like, say) => {
    expect(cupsWords({ like, ladder })).toBe(say)
  })

  it('of a ladder that can’t be right still says the cup', () => {
    expect(cupsWords({ like: [40], ladder })).toBe('like the cup of 40 % of the start liquor')
  })
})

describe('in the record', () => {
  it('it stands with the judgement, in the journal’s words and in what is compared', () => {
    const record = recordFrom(judgedBeside({ like: [12], ladder }))
    expect(record.judgements.at(-1)).toMatchObject({ grade: 'tint', cups: { like: [12] } })
    const words = 'bath: tint, red, like the cup of 12 % of the start liquor (6 to 25 % left).'
    expect(record.journal.at(-1)?.words).toBe(words)
    const other = recordFrom(judgedBeside({ like: [6], ladder }))
    const row = compareRecords([record, other]).result.find(({ label }) => label === 'Judged last: bath')
    expect(row?.same).toBe(false)
  })

  it('it fits the schema of the file that goes out', () => {
    const schema = JSON.parse(
      readFileSync(new URL('../../../public/batch-record.schema.json', import.meta.url), 'utf8')
    )
    const valid = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true }).compile(
      schema
    )
    const bench = judgedBeside({ like: [25, 12], ladder })
    const file = JSON.parse(exportRecord(recordFrom(bench), bench.entries, null, 0))
    expect([valid(file), valid.errors]).toEqual([true, null])
    file.record.judgements.at(-1).cups.like = []
    expect(valid(file)).toBe(false)
  })

  it('goes with the grade that is corrected', () => {
    const bench = judgedBeside({ like: [12], ladder })
    const { writerId, seq } = bench.entries.at(-1) as (typeof bench.entries)[number]
    const entry = { writerId, seq }
    bench.do({ type: 'Correct', entry, field: 'grade', was: 'tint', now: 'clear', why: 'the wrong cup' })
    const last = recordFrom(bench).judgements.at(-1)
    expect(last).toMatchObject({ grade: 'clear', hue: 'red' })
    expect(last).not.toHaveProperty('cups')
  })
})
