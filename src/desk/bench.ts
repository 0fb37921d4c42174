// npm run bench [-- NAME ...]: what is good enough, measured in the built app against bare baselines of the same run.
import { fileURLToPath } from 'node:url'
import { backupMemory } from './bench/backup.ts'
import { bathPhSpeed } from './bench/bath-ph.ts'
import { book } from './bench/book.ts'
import { type Figure, say } from './bench/figure.ts'
import { firstLoad } from './bench/first-load.ts'
import { type Grounds, openGrounds } from './bench/grounds.ts'
import { hiddenLateness } from './bench/hidden-lateness.ts'
import { keystroke } from './bench/keystroke.ts'
import { lateness } from './bench/lateness.ts'
import { newReading } from './bench/new-reading.ts'
import { photoFile } from './bench/photo-file.ts'
import { photoPatches } from './bench/photo-patches.ts'
import { reading } from './bench/reading.ts'
import { reopening } from './bench/reopening.ts'
import { startUp } from './bench/start-up.ts'
import { tapToStored } from './bench/tap-to-stored.ts'
import { findChromium } from './set-up/chromium.mjs'
import { makeDistIfStale } from './set-up/make-dist.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')

const measures: Record<string, (grounds: Grounds) => Promise<Figure>> = {
  'first-load': firstLoad,
  'tap-to-stored': tapToStored,
  reopening,
  book,
  reading,
  keystroke,
  'start-up': startUp,
  'new-reading': newReading,
  lateness,
  'hidden-lateness': hiddenLateness,
  'bath-ph': bathPhSpeed,
  'photo-patches': photoPatches,
  'photo-file': photoFile,
  backup: backupMemory
}

async function bench(words: string[]): Promise<number> {
  // `--gb 2` is for the measure of backups.
  const asked = words.filter((word, at) => word !== '--gb' && words[at - 1] !== '--gb')
  const unknown = asked.filter((name) => measures[name] === undefined)
  if (unknown.length > 0) {
    console.error(`There is no measure "${unknown.join('", "')}"; there are: ${Object.keys(measures).join(', ')}`)
    return 1
  }
  const chromium = findChromium()
  if (!chromium.ok) {
    console.error(chromium.say)
    return 1
  }
  await makeDistIfStale(root)
  const grounds = await openGrounds(root, chromium.path)
  let missed = 0
  try {
    for (const [name, measure] of Object.entries(measures)) {
      if (asked.length > 0 && !asked.includes(name)) continue
      const figure = await measure(grounds)
      if (figure.met === false) missed += 1
      console.log(say(figure))
    }
  } finally {
    await grounds.close()
  }
  console.log(missed === 0 ? 'Every goal is met.' : `${missed} ${missed === 1 ? 'goal is' : 'goals are'} not met.`)
  return missed === 0 ? 0 : 1
}

process.exitCode = await bench(process.argv.slice(2))
