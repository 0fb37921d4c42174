// On Debian, as root, installs the packages that the tests stand on and that are not there.
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { canRun } from './programs.mjs'

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

/** Installs what is missing of these; elsewhere than on Debian, or not as root, nothing. @param {string[]} packages */
export const installOnDebian = (packages) => {
  if (!onDebianAsRoot()) return
  const missing = packages.filter((name) => !debianHas(name))
  if (missing.length > 0) installFromDebian(missing)
}
