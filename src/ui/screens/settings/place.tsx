// Where the stove stands: a pot that is to go near the boil hangs on it.
import { useEffect, useState } from 'preact/hooks'
import { readBoilHere } from '../../../core/protocol/numbers/boil-here.ts'
import { showTemperature, type Units } from '../../../core/quantity/index.ts'
import { TextField } from '../../parts/field.tsx'
import type { Change } from './index.tsx'

/** Kept when the field is left, and only what can be read. */
export function Place({ kept, units, change }: { kept: string; units: Units; change: Change }): preact.JSX.Element {
  const [typed, setTyped] = useState(kept)
  useEffect(() => setTyped(kept), [kept])
  const read = typed.trim() === '' ? null : readBoilHere(typed, units)
  const keep = (): void => {
    // A bare figure is kept with its scale: the scale may be changed later.
    const text = /^[\d.,]+$/.test(typed.trim()) ? `${typed.trim()} °${units.temperature}` : typed.trim()
    if (text !== kept && read?.ok !== false) change({ boilsAt: text })
  }
  const hint = read?.ok
    ? `It boils at ${showTemperature(read.value.boilC, units, { digits: 1 })}. US Standard Atmosphere 1976; IAPWS-IF97.`
    : 'Altitude, pressure beside the pot, or the boil itself: 1200 m, 905 hPa, 96 °C. Empty: near the sea.'
  return (
    <section class="settings-part" aria-labelledby="settings-place">
      <h2 id="settings-place">Place</h2>
      <div onFocusOut={keep}>
        <TextField
          label="Water boils here at"
          hint={hint}
          value={typed}
          onInput={setTyped}
          id="settings-boils-at"
          problem={read && !read.ok ? `“${read.problem.found}” can’t be read. ${read.problem.instead}` : null}
        />
      </div>
    </section>
  )
}
