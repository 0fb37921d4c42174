// npm run bench:whistle -- [--hours N] [--whistles N] [--part tune] [--kind NAME]: how well whistles are heard, and what is
// taken for one.
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

// The corpus is for tests and lives with the tests; this is only its door, so nothing of src leans on it.
const place = pathToFileURL(resolve(import.meta.dirname, '../../tests/whistle-corpus/bench.ts')).href
const { bench } = (await import(place)) as { bench: (argv: string[]) => number }
process.exitCode = bench(process.argv.slice(2))
