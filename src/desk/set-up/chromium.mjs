// Finds a Chromium or Chrome for the browser tests; on Debian, as root, installs it.
import { installOnDebian } from './debian.mjs'
import { canRun, findProgram } from './programs.mjs'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome']

const places = [
  '/usr/bin',
  '/usr/local/bin',
  '/snap/bin',
  '/opt/google/chrome',
  '/Applications/Chromium.app/Contents/MacOS',
  '/Applications/Google Chrome.app/Contents/MacOS'
]

/** Looks, and installs nothing. @returns {string | null} */
export const lookForChromium = () => findProgram([...names, 'Chromium', 'Google Chrome'], places)

/** @returns {{ok: true, path: string} | {ok: false, say: string}} */
export const findChromium = () => {
  const named = process.env.CHROME_PATH
  if (named && !canRun(named)) {
    return {
      ok: false,
      say: `CHROME_PATH is "${named}", and there is no program there: give the path of a Chromium or Chrome, or leave it out.`
    }
  }
  // The browser, unless there is one, and a plain font so that type can be measured.
  const there = named ?? lookForChromium()
  installOnDebian(there ? ['fonts-dejavu-core'] : ['chromium', 'fonts-dejavu-core'])
  const path = named ?? lookForChromium()
  if (path) return { ok: true, path }
  return {
    ok: false,
    say: 'The browser tests need Chromium or Chrome: install it (on Debian: apt-get install chromium) or name it in CHROME_PATH.'
  }
}
