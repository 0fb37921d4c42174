import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { exportRecord } from '../../../src/core/record/export-record.ts'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import type { Bench } from '../pot/given.ts'
import { mossFinished, mossRun } from './moss.ts'

const schema = JSON.parse(readFileSync(new URL('../../../public/batch-record.schema.json', import.meta.url), 'utf8'))
const valid = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true }).compile(
  schema
)
const noSwatches = { entries: [], damaged: [], unknown: false }
const exportedAtMs = Date.UTC(2031, 5, 15)

// biome-ignore lint/suspicious/noExplicitAny: a document to be broken in any place
function exported(bench: Bench): any {
  const record = recordOf(bench.entries)
  if (!record) throw new Error('no record')
  return JSON.parse(exportRecord(record, bench.entries, noSwatches, exportedAtMs))
}

describe('an exported record', () => {
  it.each([
    ['of a running pot', mossRun],
    ['of a finished pot', mossFinished]
  ])('%s is what the schema says, judged by ajv', (_, run) => {
    const bench = run()
    bench.do({ type: 'TellResult', what: 'rinses', own: false, value: { kind: 'number', value: 3, unit: '' } })
    bench.do({ type: 'TellResult', what: 'Handle', own: true, value: { kind: 'text', text: 'soft' } })
    bench.do({ type: 'WriteNote', text: '<b>& "quotes" \u2028' })
    bench.do({
      type: 'Correct',
      entry: { writerId: 'w', seq: 1 },
      field: 'pot.fibre',
      was: 'wool',
      now: 'wool and nylon',
      why: 'label'
    })
    expect(valid(exported(bench)), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
  })

  it('is what the schema says where acts have the time of their cue', () => {
    const cued = mossFinished().entries.map((entry) =>
      entry.by.kind === 'person' ? { ...entry, by: { ...entry.by, timed: 'cue' as const } } : entry
    )
    const document = JSON.parse(exportRecord(recordOf(cued) as BatchRecord, cued, noSwatches, exportedAtMs))
    expect(document.record.journal.some(({ said }: { said: { atCue?: true } }) => said.atCue)).toBe(true)
    expect(valid(document), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
  })

  it('holds the whole journal, entry by entry, as stored', () => {
    const bench = mossFinished()
    const document = exported(bench)
    expect(document.entries).toEqual(bench.entries)
    expect(document).toMatchObject({
      format: 'strandline-batch-record',
      version: 4,
      exportedAt: '2031-06-15T00:00:00.000Z'
    })
    expect(document.manner).toBe('Kept in the manner of a batch record. Not a certificate of anything.')
  })

  it('can be read back into the same record', () => {
    const bench = mossFinished()
    const document = exported(bench)
    expect(JSON.parse(JSON.stringify(recordOf(document.entries)))).toEqual(document.record)
  })

  // biome-ignore lint/suspicious/noExplicitAny: as above
  it.each<[string, (d: any) => void]>([
    ['another format', (d) => (d.format = 'x')],
    ['a version nobody wrote', (d) => (d.version = 5)],
    ['a step without its plan', (d) => delete d.record.steps[0].planned],
    ['a lateness below nothing', (d) => (d.record.steps[0].lateMs = -1)],
    ['an unknown grade', (d) => (d.record.judgements[0].grade = 'purple')],
    ['a field nobody knows', (d) => (d.record.identity.mood = 'good')],
    ['an amount in spoons', (d) => (d.record.amounts[0].added.unit = 'spoon')],
    ['no entries', (d) => (d.entries = [])],
    ['a time without its offset', (d) => (d.record.identity.startedAt = '2031-06-14T09:00:00')]
  ])('%s is not', (_, breakIt) => {
    const document = exported(mossFinished())
    breakIt(document)
    expect(valid(document)).toBe(false)
  })
})
