// What went in: its names as the language takes them, and how much of it for the weight of the goods.
import type { Amount, Programme, SetOut } from '../../protocol/model.ts'
import { readAmount, showNumber } from '../../quantity/index.ts'
import { clean, type Fields, step, valueText, type Written } from './text.ts'

type Stuff = { id: string; label: string; kind: SetOut['kind']; percent: number | null }

/** An acid by its name is one, whoever added it: the cautions go by the kind. */
const soundsAcid = /acid|vinegar/i

export class Materials {
  readonly #programme: Programme
  readonly #goodsMassG: number
  readonly #stuffs = new Map<string, Stuff>()
  #filled = false

  constructor(programme: Programme, goodsMassG: number) {
    this.#programme = programme
    this.#goodsMassG = goodsMassG
  }

  /** The step that adds it, and what a comment says of it; `into`: the vessel, if not the pot. */
  added(amount: Amount, into: string | null, fill: boolean): { written: Written; say: string } {
    const to: Fields = into === null ? {} : { to: clean(into, 40, 'vessel') }
    if (fill && amount.unit === 'mL') {
      this.#filled = true
      return {
        written: step('fill', { liquor: volumeText(amount.value), ...to }, 'liquor'),
        say: into === null ? this.#ratio(amount) : ''
      }
    }
    const isWater = amount.of.trim().toLowerCase() === 'water'
    if (isWater && !this.#filled && amount.unit === 'mL' && into === null) return this.added(amount, into, true)
    const stuff: Stuff = isWater
      ? { id: 'water', label: 'water', kind: 'water', percent: null }
      : this.#stuff(amount.of)
    const words = amountText(amount)
    const share = this.#share(amount, stuff)
    const say = share === '' || into === null ? share : `${share} of all the goods`
    if (words === null) {
      const done = `${showNumber(amount.value, 2)} of ${stuff.label} in`
      return { written: step('do', { say: clean(done, 80) }, 'say'), say }
    }
    return { written: step('add', { amount: `${words} of ${stuff.id}`, ...to }, 'amount'), say }
  }

  /** The lines under `materials:`; none where nothing but water went in. */
  lines(): string[] {
    return [...this.#stuffs.values()].map(({ id, label, kind, percent }) => {
      const more = [
        ...(label === id ? [] : [`label: ${valueText(label, true)}`]),
        ...(percent === null ? [] : [`strength: ${Number(percent.toPrecision(6))} %`])
      ]
      const name = valueText(id, false)
      return more.length === 0 ? `  ${name}: ${kind}` : `  ${name}: {kind: ${kind}, ${more.join(', ')}}`
    })
  }

  #stuff(of: string): Stuff {
    const known = this.#stuffs.get(of)
    if (known) return known
    const planned = this.#programme.setOut.find((one) => one.amount.of === of)
    const kind = planned?.kind ?? (soundsAcid.test(of) ? 'acid' : 'other')
    const percent = planned?.percent ?? null
    const id = this.#idFor(of)
    const label = clean(of, 40, 'something')
    const stuff: Stuff = {
      id,
      label: this.#taken().has(label.toLowerCase()) ? id : label,
      kind: kind === 'water' ? 'other' : kind,
      percent: percent !== null && percent >= 0.001 && percent <= 100 ? percent : null
    }
    this.#stuffs.set(of, stuff)
    return stuff
  }

  /** A name that the language takes after "of", and that no other material has. */
  #idFor(of: string): string {
    const letters = of
      .replace(/[^\p{L}\p{N} _-]+/gu, ' ')
      .replace(/ +/g, ' ')
      .trim()
      .replace(/^the /i, '')
    const base = clean(letters, 34)
    const usable = readAmount(`30 mL of ${base}`)
    const name =
      usable.ok && usable.value.kind === 'volume' && usable.value.of === base && base.toLowerCase() !== 'water'
        ? base
        : 'material'
    const taken = this.#taken()
    let id = name
    for (let n = 2; taken.has(id.toLowerCase()); n++) id = `${name} ${n}`
    return id
  }

  #taken(): Set<string> {
    return new Set([...this.#stuffs.values()].flatMap(({ id, label }) => [id.toLowerCase(), label.toLowerCase()]))
  }

  #ratio({ value }: Amount): string {
    return this.#goodsMassG > 0 ? `${showNumber(value / this.#goodsMassG, 1)}:1 for these goods` : ''
  }

  #share({ value, unit }: Amount, { kind, percent }: Stuff): string {
    if (this.#goodsMassG <= 0 || kind === 'water' || unit === 'count') return ''
    const massG = unit === 'g' ? value : percent === null ? null : (value * percent) / 100
    if (massG === null) return ''
    return `${showNumber((massG / this.#goodsMassG) * 100, massG / this.#goodsMassG < 0.01 ? 3 : 2)} % owf`
  }
}

function volumeText(mL: number): string {
  return mL >= 1000 ? `${Number((mL / 1000).toPrecision(6))} L` : `${figure(mL)} mL`
}

function amountText({ value, unit, asEntered }: Amount): string | null {
  if (unit === 'count') {
    const read = readAmount(asEntered)
    return read.ok && read.value.kind === 'count' && read.value.of === null ? clean(asEntered, 30) : null
  }
  return unit === 'mL' ? `${figure(value)} mL` : `${figure(value)} g`
}

function figure(value: number): string {
  return String(Math.round(Math.min(value, 999_999) * 1000) / 1000)
}
