// npx tsx tests/whistle-corpus/fit.ts [--whistles N] [--minutes N]: makes src/shell/whistle/weights.ts anew from the part
// of the corpus that may be tuned on. Listening to it takes most of an hour; what was heard is kept in
// .work/whistle-examples.jsonl and used again until that file is deleted. The seed is fixed: the same gives the same.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { createRecogniser } from '../../src/shell/whistle/recogniser.ts'
import { canBeWhistled, inputsOf } from '../../src/shell/whistle/whistled.ts'
import { chanceOf } from './chance.ts'
import { levelOf, RATE_HZ } from './filters.ts'
import { kinds, piece } from './kinds.ts'
import { groundsOf, hear, mixed } from './measure.ts'
import { type Example, fitted, scoreOf } from './network.ts'
import { weightsText } from './weights-text.ts'

const WEIGHTS = resolve(import.meta.dirname, '../../src/shell/whistle/weights.ts')
const KEPT = resolve(import.meta.dirname, '../../.work/whistle-examples.jsonl')
const GROUNDS = 8
const PIECE_SEC = 60
/** Kinds that have something like a whistle in them get so many times the minutes of the rest. */
const RISKY = 5
const risky = /talk|music/

/** Every glide of the right kind that a whistle gave is one, the others that come with it are none. */
function ofWhistles(count: number): Example[] {
  const { there } = kinds()
  return there.flatMap((kind, which) => {
    const grounds = groundsOf(kind, 'tune', GROUNDS)
    const examples: Example[] = []
    for (let nth = which; nth < count; nth += there.length) {
      for (const db of [20, 10, 5, 0]) {
        const { plan, samples } = mixed(grounds, 'tune', nth, db)
        hear(samples, (glide, traits) => {
          if (canBeWhistled(glide, traits))
            examples.push({ whistled: glide.kind === plan.kind, inputs: inputsOf(glide, traits) })
          return false
        })
      }
    }
    return examples
  })
}

function ofSound(minutes: number): Example[] {
  return kinds().there.flatMap((kind) => {
    const examples: Example[] = []
    const recogniser = createRecogniser({
      sampleRateHz: RATE_HZ,
      weigh(glide, traits) {
        if (canBeWhistled(glide, traits)) examples.push({ whistled: false, inputs: inputsOf(glide, traits) })
        return false
      }
    })
    const pieces = risky.test(kind.name) ? minutes * RISKY : minutes
    for (let nth = 0; nth < pieces; nth++) {
      const sound = piece(kind, 'tune', 1_000 + nth, PIECE_SEC)
      const level = levelOf(sound) + 1e-9
      recogniser.push(sound.map((sample) => (sample * 0.1) / level))
    }
    return examples
  })
}

const { values } = parseArgs({
  options: { whistles: { type: 'string', default: '1200' }, minutes: { type: 'string', default: '30' } }
})
if (!existsSync(KEPT)) {
  const heard = [...ofWhistles(Number(values.whistles)), ...ofSound(Number(values.minutes))]
  mkdirSync(dirname(KEPT), { recursive: true })
  writeFileSync(KEPT, heard.map((one) => JSON.stringify(one)).join('\n'))
}
const examples = readFileSync(KEPT, 'utf8')
  .split('\n')
  .map((line): Example => JSON.parse(line))
const network = fitted(examples, chanceOf(1))
writeFileSync(WEIGHTS, weightsText(network))
const scores = (whistled: boolean): number[] =>
  examples.filter((one) => one.whistled === whistled).map((one) => scoreOf(network, one.inputs))
const [right, wrong] = [scores(true), scores(false)]
const rate = (limit: number): string =>
  `${((100 * right.filter((score) => score > limit).length) / right.length).toFixed(1)} %`
console.log(`${right.length} glides of whistles, ${wrong.length} of other sound`)
for (const limit of [0, 1, 2, 3, 4]) {
  console.log(
    `over ${limit}: ${rate(limit)} of the whistles, ${wrong.filter((score) => score > limit).length} of the rest`
  )
}
