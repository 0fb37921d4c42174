// How many checks of a stage passed and failed. Whatever did not plainly pass has failed.
import { existsSync, readFileSync } from 'node:fs'

/** @typedef {{passed: number, failed: number, why: string[]}} Counts */

/** @param {boolean} passed @param {string} why @returns {Counts} */
export const countOne = (passed, why) =>
  passed ? { passed: 1, failed: 0, why: [] } : { passed: 0, failed: 1, why: [why] }

/**
 * Counts a report of Vitest (its JSON reporter).
 * A file that could not even be loaded holds no tests and counts as one failed; a skipped test counts as failed, since
 * nobody knows whether it would pass; so do no tests at all, a missing report, and a run that broke off after its tests.
 * @param {string} reportFile @param {number | null} exitCode @returns {Counts}
 */
export const countReport = (reportFile, exitCode) => {
  if (!existsSync(reportFile)) return countOne(false, `it ended with ${exitCode ?? 'a signal'} and left no report`)
  const report = JSON.parse(readFileSync(reportFile, 'utf8'))
  /** @type {Counts} */
  const counts = { passed: 0, failed: 0, why: [] }
  for (const file of report.testResults ?? []) {
    const tests = file.assertionResults ?? []
    const passed = tests.filter((/** @type {{status: string}} */ test) => test.status === 'passed').length
    const brokenFile = file.status !== 'passed' && passed === tests.length
    counts.passed += passed
    counts.failed += tests.length - passed + (brokenFile ? 1 : 0)
    if (brokenFile) counts.why.push(`${file.name}: ${file.message || 'it could not be run'}`)
    for (const test of tests) if (test.status !== 'passed') counts.why.push(`${test.fullName} (${test.status})`)
  }
  if (counts.passed + counts.failed === 0) return countOne(false, 'it has no tests')
  if (exitCode !== 0 && counts.failed === 0) {
    counts.failed = 1
    counts.why.push(`its tests passed, and yet it ended with ${exitCode ?? 'a signal'}`)
  }
  return counts
}
