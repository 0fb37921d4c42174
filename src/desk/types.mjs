// npm run types: each part of the tree is checked with the types that its place allows it.
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const projects = ['src/core', 'src/session', 'src', 'src/service-worker', '.']

let failed = false
for (const project of projects) {
  const done = spawnSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', project], {
    cwd: root,
    stdio: 'inherit'
  })
  if (done.status !== 0) {
    failed = true
    console.error(`types: problems in ${project}`)
  }
}
process.exitCode = failed ? 1 : 0
