// Tells whether dist was built from the sources that lie here now.
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'

/** Everything that the built app depends on. Packages are told by the lock file. */
const sources = ['src', 'protocols', 'public', 'index.html', 'vite.config.ts', 'package-lock.json']

// Not in dist: what lies there is published as it is.
const stampOf = (/** @type {string} */ root) => join(root, 'node_modules', '.strandline', 'built-from')

/** @param {string} path @returns {string[]} */
const filesUnder = (path) => {
  if (!existsSync(path)) return []
  if (statSync(path).isFile()) return [path]
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)))
}

/** By content, not by date: a clone or a checkout changes the dates of files that did not change.
 * @param {string} root @returns {string} */
export const sourcePrint = (root) => {
  const hash = createHash('sha256')
  for (const source of sources) {
    for (const file of filesUnder(join(root, source))) {
      hash
        .update(`${file.slice(root.length)}\0`)
        .update(readFileSync(file))
        .update('\0')
    }
  }
  return hash.digest('hex')
}

/** @param {string} root @returns {boolean} */
export const distIsFresh = (root) => {
  const stamp = stampOf(root)
  const whole = ['index.html', 'sw.js'].every((name) => existsSync(join(root, 'dist', name)))
  return whole && existsSync(stamp) && readFileSync(stamp, 'utf8') === sourcePrint(root)
}

/** Called before a build: one that is broken off must not pass for a good one. @param {string} root */
export const forgetBuild = (root) => rmSync(stampOf(root), { force: true })

/** @param {string} root @param {string} print taken before the build, so that an edit during it is built again */
export const rememberBuild = (root, print) => {
  const stamp = stampOf(root)
  mkdirSync(dirname(stamp), { recursive: true })
  writeFileSync(stamp, print)
}
