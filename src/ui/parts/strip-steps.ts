// The steps of a box of pH strips, as typed: "4, 4.5, 5" or "2 to 9 by 0.5".

export type ReadSteps = { ok: true; steps: number[] } | { ok: false; say: string }

const instead = 'Write them as on the box, for example 4, 4.5, 5, 5.5 or 2 to 9 by 0.5.'
const STEPS_MOST = 60

export function readSteps(text: string): ReadSteps {
  const even = /^\s*([\d.,]+)\s*(?:to|\.\.|–|-)\s*([\d.,]+)\s+by\s+([\d.,]+)\s*$/i.exec(text)
  const steps = even
    ? evenly(even.slice(1).map(figure))
    : text
        .trim()
        .split(/[;\s]+|,\s+/)
        .filter(Boolean)
        .map(figure)
  const wrong = problemOf(steps)
  return wrong === null ? { ok: true, steps } : { ok: false, say: `${wrong} ${instead}` }
}

/** As it would be typed. */
export function stepsSay(steps: readonly number[]): string {
  const [first, second] = [steps[0] ?? 0, steps[1] ?? 0]
  const by = rounded(second - first)
  const even = steps.length > 3 && steps.every((step, i) => rounded(first + i * by) === step)
  return even ? `${first} to ${steps.at(-1)} by ${by}` : steps.join(', ')
}

function evenly([from = Number.NaN, to = Number.NaN, by = Number.NaN]: number[]): number[] {
  const count = by > 0 ? Math.floor((to - from) / by + 1e-6) + 1 : 0
  return Array.from({ length: Math.max(0, Math.min(count, STEPS_MOST + 1)) || 0 }, (_, i) => rounded(from + i * by))
}

function problemOf(steps: readonly number[]): string | null {
  if (steps.length < 2) return 'A strip has two steps at least.'
  if (steps.length > STEPS_MOST) return `No strip has more than ${STEPS_MOST} steps.`
  if (!steps.every((step) => step >= 0 && step <= 14)) return 'pH lies between 0 and 14.'
  const rising = steps.every((step, i) => i === 0 || step > (steps[i - 1] as number))
  return rising ? null : 'The steps do not rise one after the other.'
}

/** A comma in a figure is a decimal point. */
function figure(text: string): number {
  return /^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100
}
