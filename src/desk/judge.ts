// npm run judge -- [--skeins N] [--from N] [--processes N] [--part tune]: how well skeins are judged by their photographs.
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

// The photographs are for tests and are made there; this is only their door, so nothing of src leans on them.
const place = pathToFileURL(resolve(import.meta.dirname, '../../tests/photo-corpus/judge.ts')).href
const { run } = (await import(place)) as { run: (argv: string[]) => Promise<number> }
process.exitCode = await run(process.argv.slice(2))
