// Installs what is missing from node_modules. Runs before anything is installed, so it imports nothing but Node's own.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** @typedef {{version?: string, optional?: boolean, devOptional?: boolean}} Locked */

/** @param {string} file @returns {Record<string, Locked> | null} */
const lockedPackages = (file) => {
  if (!existsSync(file)) return null
  return JSON.parse(readFileSync(file, 'utf8')).packages ?? null
}

/**
 * The packages that the lock file names and node_modules lacks, judged by the list that npm itself leaves there at the
 * end of a finished install. So an install done by hand counts, and one that was broken off does not.
 * Packages for other machines (optional ones) may be absent.
 * @param {string} root @returns {string[]}
 */
export const missingPackages = (root) => {
  const wanted = lockedPackages(join(root, 'package-lock.json')) ?? {}
  const present = lockedPackages(join(root, 'node_modules', '.package-lock.json')) ?? {}
  return Object.entries(wanted)
    .filter(([path, locked]) => path !== '' && !locked.optional && present[path]?.version !== locked.version)
    .map(([path]) => path)
}

const nodeMajorLeast = 20

/**
 * @param {string} root
 * @returns {boolean} false when npm could not install; npm has then said why
 */
export const installMissing = (root) => {
  if (Number.parseInt(process.versions.node, 10) < nodeMajorLeast) {
    console.error(`Strandline needs Node ${nodeMajorLeast} or newer; this is ${process.versions.node}.`)
    return false
  }
  const missing = missingPackages(root)
  if (missing.length === 0) return true
  console.log(`Installing ${missing.length} packages (npm ci) ...`)
  // Under `npm start` the same npm is called again; under plain node the one on the PATH.
  const npm = process.env.npm_execpath
  const done = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, 'ci', '--include=dev'], { cwd: root, stdio: 'inherit' })
    : spawnSync('npm', ['ci', '--include=dev'], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })
  if (done.status === 0) return true
  console.error('The packages could not be installed: npm ci failed (see above). A network is needed for this once.')
  return false
}
