// npm run simulate -- --seeds N [--from K]: N simulated days; what came up, and each failure with its seed.
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

// The simulation is a test and lives with the tests; this is only its door, so nothing of src leans on it.
const place = pathToFileURL(resolve(import.meta.dirname, '../../tests/simulation/report.ts')).href
const { report } = (await import(place)) as { report: (argv: string[]) => Promise<number> }
process.exitCode = await report(process.argv.slice(2))
