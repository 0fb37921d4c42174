// Finds a Chromium or Chrome for the browser tests; on Debian, as root, installs it.
import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync, statSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome']

const places = [
  '/usr/bin',
  '/usr/local/bin',
  '/snap/bin',
  '/opt/google/chrome',
  '/Applications/Chromium.app/Contents/MacOS',
  '/Applications/Google Chrome.app/Contents/MacOS'
]

/** The packages of Debian that the tests use: the browser, and one plain font so that type can be measured. */
const debianPackages = ['chromium', 'fonts-dejavu-core']

/** @param {string} file @returns {boolean} */
const canRun = (file) => {
  try {
    accessSync(file, constants.X_OK)
    return statSync(file).isFile()
  } catch {
    return false
  }
}

/** Looks, and installs nothing. @returns {string | null} */
export const lookForChromium = () => {
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...places].filter((folder) => folder !== '')
  const files = folders.flatMap((folder) => [...names, 'Chromium', 'Google Chrome'].map((name) => join(folder, name)))
  return files.find(canRun) ?? null
}

const onDebianAsRoot = () => existsSync('/etc/debian_version') && canRun('/usr/bin/apt-get') && process.getuid?.() === 0

/** @param {string} name @returns {boolean} */
const debianHas = (name) =>
  spawnSync('dpkg-query', ['-s', name], { encoding: 'utf8' }).stdout.includes('Status: install ok installed')

/** @param {string[]} missing */
const installFromDebian = (missing) => {
  console.log(`Installing ${missing.join(', ')} (apt-get) ...`)
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  for (const step of [['update'], ['install', '-y', '--no-install-recommends', ...missing]]) {
    const done = spawnSync('apt-get', ['-qq', ...step], { env, encoding: 'utf8' })
    if (done.status !== 0) console.error(`apt-get ${step.join(' ')} failed:\n${done.stderr}`)
  }
}

/** @returns {{ok: true, path: string} | {ok: false, say: string}} */
export const findChromium = () => {
  const named = process.env.CHROME_PATH
  if (named && !canRun(named)) {
    return {
      ok: false,
      say: `CHROME_PATH is "${named}", and there is no program there: give the path of a Chromium or Chrome, or leave it out.`
    }
  }
  if (onDebianAsRoot()) {
    const there = named ?? lookForChromium()
    const missing = debianPackages.filter((name) => !(name === 'chromium' && there) && !debianHas(name))
    if (missing.length > 0) installFromDebian(missing)
  }
  const path = named ?? lookForChromium()
  if (path) return { ok: true, path }
  return {
    ok: false,
    say: 'The browser tests need Chromium or Chrome: install it (on Debian: apt-get install chromium) or name it in CHROME_PATH.'
  }
}
