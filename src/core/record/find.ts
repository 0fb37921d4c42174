// Finding a batch: what of it can be looked for, and which of thousands fit what is asked. Words are looked for inside
// words, with capitals and accents left aside.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import { recordOf } from './record-of.ts'
import { latestResults } from './results.ts'

/** What a journal says that the line of the book does not; derived only, made anew when its journal has grown. */
export type Found = {
  potId: string
  /** How many entries it was read from. */
  entries: number
  yarn: string
  stocks: string[]
  verdict: string
  /** Notes, results, skeins and the dyer, ready to be looked through. */
  words: string
  /** The batch whose yarn was dyed over, and the one whose bath it went on in. */
  yarnOf: string | null
  bathOf: string | null
}

export type FindLine = { batchName: string; colourway: string; protocolTitle: string; startedAtMs: number }

/** Every part must fit; '' and null: anything does. `toMs` itself is outside. */
export type Wanted = {
  words: string
  fromMs: number | null
  toMs: number | null
  stock: string
  yarn: string
  protocol: string
  verdict: string
  skein: string
}

export const anything: Wanted = {
  words: '',
  fromMs: null,
  toMs: null,
  stock: '',
  yarn: '',
  protocol: '',
  verdict: '',
  skein: ''
}

export function foundIn(potId: string, entries: readonly Entry<PotEvent>[], stored: number): Found {
  const record = recordOf(entries)
  const found = { potId, entries: stored, yarn: '', stocks: [], verdict: '', words: '', yarnOf: null, bathOf: null }
  if (record === null) return found
  const { identity, substrate, programme } = record
  const results = latestResults(record.results)
  const bottles = Object.values(programme.given?.materials ?? {}).map(({ name }) => name)
  const stocks = [...bottles, ...record.amounts.map(({ of }) => of)].filter((name) => name !== '')
  const words = [
    ...substrate.skeins.map(({ tag }) => tag),
    identity.dyer ?? '',
    ...record.notes.map(({ text }) => text),
    ...results.map(({ label, words: said }) => `${label} ${said}`)
  ]
  return {
    ...found,
    yarn: substrate.fibre,
    stocks: [...new Set(stocks)],
    verdict: results.find(({ what, own }) => what === 'verdict' && !own)?.words ?? '',
    words: plain(words.join(' ')),
    yarnOf: substrate.parentBatchId,
    bathOf: substrate.bath.parentBatchId
  }
}

/** `skein`: the verdict on its skein in a word; '': none. It is no part of `found`, for a skein is judged without its
 * journal growing. */
export type Looked<L extends FindLine> = { line: L; found: Found | null; skein: string; text: string }

/** Lines with all their words joined once, so that a letter typed looks through thousands in no time. */
export function lookable<L extends FindLine>(line: L, found: Found | null, skein = ''): Looked<L> {
  const { batchName, colourway, protocolTitle } = line
  const own = plain([batchName, colourway, protocolTitle, found?.yarn, ...(found?.stocks ?? [])].join('\n'))
  return { line, found, skein, text: found ? `${own}\n${found.words}` : own }
}

/** The lines that fit, in the order given. What is not looked through yet fits no stock, yarn or verdict. */
export function findAmong<L extends FindLine>(all: readonly Looked<L>[], wanted: Wanted): L[] {
  const words = plain(wanted.words).split(/\s+/).filter(Boolean)
  const { fromMs, toMs, stock, yarn, protocol, verdict, skein } = wanted
  const fitting: L[] = []
  for (const { line, found, text, skein: judged } of all) {
    if (fromMs !== null && line.startedAtMs < fromMs) continue
    if (toMs !== null && line.startedAtMs >= toMs) continue
    if (protocol !== '' && line.protocolTitle !== protocol) continue
    if (yarn !== '' && found?.yarn !== yarn) continue
    if (verdict !== '' && found?.verdict !== verdict) continue
    if (skein !== '' && judged !== skein) continue
    if (stock !== '' && !found?.stocks.includes(stock)) continue
    if (words.every((word) => text.includes(word))) fitting.push(line)
  }
  return fitting
}

/** Every value there is to choose from, in the order of the alphabet. */
export function choicesIn<L extends FindLine>(
  all: readonly Looked<L>[]
): Pick<{ [K in keyof Wanted]: string[] }, 'stock' | 'yarn' | 'protocol' | 'verdict' | 'skein'> {
  const stock = new Set<string>()
  const yarn = new Set<string>()
  const protocol = new Set<string>()
  const verdict = new Set<string>()
  const skein = new Set<string>()
  for (const { line, found, skein: judged } of all) {
    protocol.add(line.protocolTitle)
    skein.add(judged)
    if (!found) continue
    yarn.add(found.yarn)
    verdict.add(found.verdict)
    for (const each of found.stocks) stock.add(each)
  }
  const sorted = (values: Set<string>): string[] =>
    [...values].filter((value) => value !== '').sort((a, b) => a.localeCompare(b))
  return {
    stock: sorted(stock),
    yarn: sorted(yarn),
    protocol: sorted(protocol),
    verdict: sorted(verdict),
    skein: sorted(skein)
  }
}

function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}+/gu, '')
    .toLowerCase()
}
