// npm run build
import { fileURLToPath } from 'node:url'
import { installMissing } from './set-up/packages.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')
if (!installMissing(root)) process.exit(1)
// Imported late: it needs what was just installed.
const { makeDist } = await import('./set-up/make-dist.mjs')
await makeDist(root)
console.log('Built dist: put its files on any static host, under any path.')
