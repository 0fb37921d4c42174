// npm test: every stage, or those named (npm test -- unit browser). The last line is "N passed, N failed".
import { fileURLToPath } from 'node:url'
import { installMissing } from './set-up/packages.mjs'
import { stages } from './set-up/stages.mjs'

/** @typedef {import('./set-up/counts.mjs').Counts} Counts */

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')

/** @param {string} name @returns {Promise<Counts>} */
const runStage = async (name) => {
  console.log(`\n== ${name}`)
  const startedMs = Date.now()
  const stage = stages[name]
  /** @type {Counts} */
  const counts = stage
    ? await stage(root).catch((error) => ({ passed: 0, failed: 1, why: [String(error?.stack ?? error)] }))
    : { passed: 0, failed: 1, why: [`there is no such stage; there are: ${Object.keys(stages).join(', ')}`] }
  const seconds = ((Date.now() - startedMs) / 1000).toFixed(1)
  console.log(`== ${name}: ${counts.passed} passed, ${counts.failed} failed, ${seconds} s`)
  return counts
}

const asked = process.argv.slice(2)
const names = asked.length > 0 ? asked : Object.keys(stages)
let passed = 0
let failed = 0
const why = []
if (installMissing(root)) {
  for (const name of names) {
    const counts = await runStage(name)
    passed += counts.passed
    failed += counts.failed
    why.push(...counts.why.map((line) => `${name}: ${line}`))
  }
} else failed = names.length

if (why.length > 0) console.log(`\nFailed:\n${why.join('\n')}`)
console.log(`\n${passed} passed, ${failed} failed`)
process.exitCode = failed > 0 ? 1 : 0
