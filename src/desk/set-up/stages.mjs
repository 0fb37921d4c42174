// The stages of npm test, in their order: what each runs and how it is counted.
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findChromium } from './chromium.mjs'
import { countOne, countReport } from './counts.mjs'
import { findPdfReader } from './pdf-reader.mjs'

/** @typedef {import('./counts.mjs').Counts} Counts */
/** @typedef {(root: string) => Promise<Counts>} Stage */

const minute = 60_000

/**
 * Runs Node on a file. Past its time it is ended, and counts as failed: a stage that hangs must not hide the rest.
 * @param {string} root @param {string[]} args @param {{limitMs: number, env?: Record<string, string>}} options
 * @returns {Promise<number | null>} the exit code
 */
const runNode = (root, args, { limitMs, env = {} }) =>
  new Promise((done) => {
    const child = spawn(process.execPath, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } })
    const timer = setTimeout(() => {
      console.error(`Ended after ${limitMs / minute} minutes.`)
      child.kill('SIGKILL')
    }, limitMs)
    child.on('error', () => done(1))
    child.on('exit', (code) => {
      clearTimeout(timer)
      done(code)
    })
  })

/** @param {string} name @param {string[]} args @returns {Stage} */
const oneCheck = (name, args) => async (root) =>
  countOne((await runNode(root, args, { limitMs: 5 * minute })) === 0, `${name} found problems, see above`)

/** @param {string[]} projects @param {number} limitMs @param {Record<string, string>} [env] @returns {Stage} */
const vitest = (projects, limitMs, env) => async (root) => {
  const folder = mkdtempSync(join(tmpdir(), 'strandline-test-'))
  const report = join(folder, 'report.json')
  const args = [
    'run',
    ...projects.map((project) => `--project=${project}`),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`
  ]
  const code = await runNode(root, ['node_modules/vitest/vitest.mjs', ...args], { limitMs, env })
  const counts = countReport(report, code)
  rmSync(folder, { recursive: true, force: true })
  return counts
}

/** @type {Stage} */
const browser = async (root) => {
  const chromium = findChromium()
  if (!chromium.ok) return countOne(false, chromium.say)
  const reader = findPdfReader()
  if (!reader.ok) return countOne(false, reader.say)
  const { makeDistIfStale } = await import('./make-dist.mjs')
  await makeDistIfStale(root)
  const env = { STRANDLINE_DIST: join(root, 'dist'), CHROME_PATH: chromium.path }
  return vitest(['browser'], 25 * minute, env)(root)
}

/** @type {Record<string, Stage>} */
export const stages = {
  types: oneCheck('the compiler', ['src/desk/types.mjs']),
  lint: oneCheck('the linter', ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.']),
  imports: vitest(['imports'], 5 * minute),
  tidy: vitest(['tidy'], 5 * minute),
  unit: vitest(['core', 'unit'], 15 * minute),
  reference: vitest(['reference'], 10 * minute),
  simulation: vitest(['simulation'], 15 * minute),
  browser
}
