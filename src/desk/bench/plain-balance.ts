// The balance of charges of a bath written down plainly, as one would for a general root finder: what the app's own way of
// solving it is measured and tested against.
import type { Totals } from '../../core/chemistry/bath/balance.ts'
import type { Constants } from '../../core/chemistry/bath/constants.ts'

/** What is over of positive charge in mol/kg at a pH and an ionic strength, and the ionic strength that comes of it. */
export function speciesAt(
  ph: number,
  ionic: number,
  { acetic, citric, carbon, cation }: Totals,
  k: Constants
): { balance: number; ionic: number } {
  const h = 10 ** -ph
  const root = Math.sqrt(ionic)
  const g = 10 ** (-k.daviesA * (root / (1 + root) - 0.3 * ionic))
  const acetate = (acetic * k.acetic) / (k.acetic + g * h)
  const one = k.citric1 / (g * h)
  const two = (one * k.citric2) / (g ** 3 * h)
  const three = (two * k.citric3) / (g ** 5 * h)
  const perCitric = citric / (1 + one + two + three)
  const bicarbonate = k.carbonic1 / (g * h)
  const carbonate = (bicarbonate * k.carbonic2) / (g ** 3 * h)
  const perCarbon = carbon / (1 + bicarbonate + carbonate)
  const hydrogen = h / g
  const hydroxide = k.water / (g * h)
  const balance =
    cation +
    hydrogen -
    hydroxide -
    acetate -
    perCitric * (one + 2 * two + 3 * three) -
    perCarbon * (bicarbonate + 2 * carbonate)
  const squares =
    cation +
    hydrogen +
    hydroxide +
    acetate +
    perCitric * (one + 4 * two + 9 * three) +
    perCarbon * (bicarbonate + 4 * carbonate)
  return { balance, ionic: squares / 2 }
}
