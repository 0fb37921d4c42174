// npx tsx tests/whistle-corpus/fit.ts: makes src/shell/whistle/weights.ts anew from the part of the corpus that may be tuned
// on, and prints what each limit lets through of a share of it that the network was not fitted to, by which the limit is
// chosen. The weights that are kept are fitted to all of it. The seed is fixed: the same gives the same.
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { canBeWhistled, inputsOf } from '../../src/shell/whistle/whistled.ts'
import { chanceOf } from './chance.ts'
import { examplesOf, hoursOf, loudnesses, type Share, type Weighed, whistles } from './examples.ts'
import { type Kind, kinds } from './kinds.ts'
import { type Example, fitted, type Network, scoreOf } from './network.ts'
import { ENOUGH, weightsText } from './weights-text.ts'

const WEIGHTS = resolve(import.meta.dirname, '../../src/shell/whistle/weights.ts')

type OfKind = { kind: Kind; heard: Record<Share, Weighed[]> }

const stillWeighed = (heard: Weighed[]): Weighed[] => heard.filter(({ glide, traits }) => canBeWhistled(glide, traits))
const exampleOf = ({ glide, traits, whistle }: Weighed): Example => ({
  whistled: whistle?.isIt ?? false,
  inputs: inputsOf(glide, traits)
})

/** What the limit would have made of the share it is chosen on. */
function toldAt(limit: number, all: readonly OfKind[], network: Network): string {
  const over = all.map(({ kind, heard }) => ({
    kind,
    taken: stillWeighed(heard.choice).filter((one) => scoreOf(network, exampleOf(one).inputs) > limit)
  }))
  const hits = loudnesses.map((db) => {
    const found = over.map(
      ({ taken }) =>
        new Set(taken.flatMap(({ whistle }) => (whistle?.isIt && whistle.db === db ? [whistle.nth] : []))).size
    )
    return `${((100 * found.reduce((sum, each) => sum + each, 0)) / (whistles.choice * all.length)).toFixed(1)} % at ${db} dB`
  })
  const wrong = over.flatMap(({ taken }) => taken.filter(({ whistle }) => whistle?.isIt === false)).length
  const taken = over.map(
    (each) =>
      `${each.kind.name} ${each.taken.filter(({ whistle }) => !whistle).length} in ${hoursOf(each.kind, 'choice').toFixed(1)} h`
  )
  return `over ${limit}: ${hits.join(', ')}; ${wrong} other glides beside a whistle; taken for one: ${taken.join(', ')}`
}

const all = kinds().there.map((kind): OfKind => ({ kind, heard: examplesOf(kind) }))
const examplesIn = (share: Share): Example[] => all.flatMap(({ heard }) => stillWeighed(heard[share]).map(exampleOf))
const fit = examplesIn('fit')
const both = [...fit, ...examplesIn('choice')]
console.log(`${both.filter(({ whistled }) => whistled).length} of ${both.length} glides are whistled`)
const tried = fitted(fit, chanceOf(1))
for (const limit of [-1, 0, 1, 2, 3, 4, ENOUGH]) console.log(toldAt(limit, all, tried))
writeFileSync(WEIGHTS, weightsText(fitted(both, chanceOf(1))))
