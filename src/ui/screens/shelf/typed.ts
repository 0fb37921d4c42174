// Amounts as they are typed: a bare number is in the unit the dyer reads in, any other unit may stand behind it.
import { fromML, type Read, readMass, readVolume, type Units } from '../../../core/quantity/index.ts'

/** The unit that a bare number of volume is in, as the dyer reads volumes. */
export function volumeUnitOf({ volume }: Units) {
  const unit = volume === 'metric' ? 'mL' : volume === 'us' ? 'US fl oz' : 'imperial fl oz'
  return { unit, typed: (mL: number) => plain(fromML(mL, unit)) } as const
}

/** A number as it is typed, without the dust of a conversion. */
export function plain(value: number): string {
  return String(Number(value.toPrecision(8)))
}

export function readVolumeTyped(text: string, units: Units): Read<number> {
  const kitchen = units.volume === 'metric' ? 'metric' : units.volume
  return readVolume(text, { bareUnit: volumeUnitOf(units).unit, kitchen })
}

/** "mL", "US fl oz", "g", "oz": what stands behind the field. */
export function unitShown(unit: 'mL' | 'g', units: Units): string {
  return unit === 'mL' ? volumeUnitOf(units).unit : units.mass === 'us' ? 'oz' : 'g'
}

export function readMassTyped(text: string, units: Units): Read<number> {
  return readMass(text, { bareUnit: units.mass === 'us' ? 'oz' : 'g' })
}

/** How much there is, in mL or g. */
export function readLevel(text: string, unit: 'mL' | 'g', units: Units): Read<number> {
  return unit === 'mL' ? readVolumeTyped(text, units) : readMassTyped(text, units)
}

export function problemWords(read: Extract<Read<number>, { ok: false }>): string {
  const { found, instead } = read.problem
  return found === '' ? instead : `“${found}” can’t be read. ${instead}`
}
