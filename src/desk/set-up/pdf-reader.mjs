// What reads the printed pages back, independent of the browser that made them: poppler's pdftotext and pdfinfo.
import { installOnDebian } from './debian.mjs'
import { findProgram } from './programs.mjs'

/** On Debian, as root, installs it. @returns {{ok: true} | {ok: false, say: string}} */
export const findPdfReader = () => {
  const missing = () => ['pdftotext', 'pdfinfo'].filter((name) => findProgram([name]) === null)
  if (missing().length > 0) installOnDebian(['poppler-utils'])
  const still = missing()
  if (still.length === 0) return { ok: true }
  return {
    ok: false,
    say: `The browser tests read printed pages back with ${still.join(' and ')}: install poppler (on Debian: apt-get install poppler-utils).`
  }
}
