// A pot made smaller or paler, so that what is there will do.
import type { Protocol } from '../../../core/protocol/model.ts'
import { readMass, readPercent, showNumber, type Units } from '../../../core/quantity/index.ts'
import type { StartDraft } from '../../parts/start-draft.ts'

/** Every skein so much lighter, down to a tenth of a gram; null: a weight can't be read. */
export function lighter(
  draft: StartDraft,
  share: number,
  units: Units
): { draft: Partial<StartDraft>; goodsG: number } | null {
  let goodsG = 0
  const skeins = []
  for (const skein of draft.skeins) {
    const read = readMass(skein.mass, { bareUnit: units.mass === 'us' ? 'oz' : 'g' })
    if (!read.ok) return null
    const massG = Math.floor(read.value * share * 10 + 1e-6) / 10
    if (massG < 0.1) return null
    goodsG += massG
    skeins.push({ ...skein, mass: `${showNumber(massG, 1)} g` })
  }
  return { draft: { skeins }, goodsG }
}

/** The depth that a material is dyed to, so much paler; null: its amount hangs on no answer of the form. */
export function paler(
  protocol: Protocol,
  draft: StartDraft,
  material: string,
  share: number
): { draft: Partial<StartDraft>; percent: number; asked: string } | null {
  // A mix's depth is that of the mix, and its stocks follow.
  const holder = protocol.materials.find(
    ({ id, amount, parts }) => amount !== null && (id === material || parts?.some((part) => part.id === material))
  )
  const id = /^\{([^{}]+)\}\s*owf$/.exec(holder?.amount?.trim() ?? '')?.[1]?.trim()
  const input = protocol.inputs.find((one) => one.id === id && one.kind === 'percent')
  if (!input) return null
  const read = readPercent(draft.values[input.id] ?? '', { bare: true })
  if (!read.ok) return null
  const percent = Math.floor(read.value * share * 1000 + 1e-6) / 1000
  if (percent <= 0 || percent < (input.least ?? 0)) return null
  const values = { ...draft.values, [input.id]: `${showNumber(percent, 3)} %` }
  return { draft: { values }, percent, asked: input.ask }
}
