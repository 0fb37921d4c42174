// A protocol of many steps as a dyer might write it: acts, amounts, waits, moments. Every step has figures of its own,
// so that nothing is read for one step that was read for another.

const words: readonly ((no: number) => string)[] = [
  (no) => `enter: {id: in-${no}, marks: start ${no}}`,
  (no) => `add: {id: A${no}, amount: ${no + 1} mL of acid}`,
  (no) => `hold: {for: ${no + 5}..${no + 7} s, at: 80..85 °C, outside: note, late: shift}`,
  (no) => `lower: {to: ${(no % 40) + 1} cm, of: 60 cm, hands: ${no + 20} s}`,
  (no) => `wait: {until: ${no + 60} s after start ${no - (no % 5)}, at least: ${no + 1} s, late: absorb}`
]

const head = `strandline: 1
title: Long
liquor: 20:1
materials:
  acid: {kind: acid, strength: 5 %}
steps:
  - fill
  - heat: {to: 80 °C, rate: 2 °C/min}
`

/** `written` steps stand in the text, and it makes that many times `rounds`, but for the few outside the loop. */
export function longProtocol(written: number, rounds = 1): string {
  const inside = Array.from({ length: written - (rounds === 1 ? 3 : 4) }, (_, no) => words[no % words.length]?.(no))
  const steps = (pad: string): string => inside.map((step) => `${pad}- ${step}\n`).join('')
  const loop = rounds === 1 ? steps('  ') : `  - repeat:\n      times: ${rounds}\n      steps:\n${steps('        ')}`
  return `${head}${loop}  - heat: off\n`
}
