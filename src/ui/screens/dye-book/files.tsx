// A record as files, to be read without the program.
import { useState } from 'preact/hooks'
import type { Entry } from '../../../core/pot/entry.ts'
import type { PotEvent } from '../../../core/pot/events.ts'
import { entriesCsv } from '../../../core/record/entries-csv.ts'
import { exportRecord } from '../../../core/record/export-record.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { keptSwatches } from './kept-swatches.ts'

type Props = { kitchen: Kitchen; record: BatchRecord; entries: readonly Entry<PotEvent>[] }

export function FilesPart({ kitchen, record, entries }: Props): preact.JSX.Element {
  const { batchName } = record.identity
  const name = batchName.replace(/[^\p{L}\p{N} _-]/gu, '').trim() || 'batch-record'
  const { text } = record.protocol
  const [lacks, setLacks] = useState<string | null>(null)
  const saveJson = async (): Promise<void> => {
    const { read, problem } = await keptSwatches(kitchen, record.identity.potId)
    const json = exportRecord(record, entries, read, kitchen.now.peek())
    kitchen.saveFile(`${name}.json`, 'application/json', json)
    setLacks(read === null ? `The file was written without what was found of the skein. ${problem}` : null)
  }
  return (
    <section class="book-part" aria-labelledby="book-files">
      <h2 id="book-files">Files</h2>
      <div class="book-acts">
        <Pad onPress={() => void saveJson()}>Record as JSON</Pad>
        <Pad onPress={() => kitchen.saveFile(`${name}.csv`, 'text/csv', entriesCsv(record))}>Entries as CSV</Pad>
        {text === '' ? null : (
          <Pad onPress={() => kitchen.saveFile(`${name} protocol.yaml`, 'application/yaml', text)}>Protocol as run</Pad>
        )}
      </div>
      {lacks === null ? null : (
        <Strip tone="warn" urgent>
          {lacks}
        </Strip>
      )}
      <p class="soft">
        JSON holds all of it (batch-record.schema.json, beside this app, says what its fields are). CSV is a table of
        the entries, with figures in metric units.
      </p>
    </section>
  )
}
