// The whole Dye book as one table.
import { useState } from 'preact/hooks'
import { type BatchLine, batchesCsv } from '../../../core/record/batches-csv.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { recordOf } from '../../../core/record/record-of.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { dayKey } from './days.ts'

export function BookFile({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [said, setSaid] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const save = async (): Promise<void> => {
    setBusy(true)
    try {
      const rows = await allBatches(kitchen, setSaid)
      kitchen.saveFile(`dye-book ${dayKey(kitchen.now.peek())}.csv`, 'text/csv', batchesCsv(rows))
      setSaid(`Saved as a file: ${rows.length} ${rows.length === 1 ? 'batch' : 'batches'}.`)
    } catch (error) {
      setSaid(`Not saved: the book can’t be read (${error instanceof Error ? error.message : String(error)}).`)
    }
    setBusy(false)
  }
  return (
    <div class="book-file">
      <Pad disabled={busy} onPress={() => void save()}>
        All batches as CSV
      </Pad>
      <p class="soft" role="status">
        {said ?? 'A table with a row for each batch, for any spreadsheet.'}
      </p>
    </div>
  )
}

/** One journal after the other: of a large book all at once would not fit into memory. */
async function allBatches(kitchen: Kitchen, say: (words: string) => void): Promise<(BatchRecord | BatchLine)[]> {
  const lines = await kitchen.book(0, Number.MAX_SAFE_INTEGER)
  const rows: (BatchRecord | BatchLine)[] = []
  for (const line of lines) {
    if (rows.length % 25 === 0) say(`Reading ${rows.length} of ${lines.length}.`)
    const { entries, damaged } = await kitchen.entries(line.potId)
    rows.push(recordOf(entries, { damaged }) ?? line)
  }
  return rows
}
