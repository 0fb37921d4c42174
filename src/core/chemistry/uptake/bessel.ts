/** Bessel function of the first kind of a whole order, by Bessel's integral (1/π) ∫ cos(nθ - x sin θ) dθ from 0 to π. The
 * trapezoidal rule is exact to the last bit for it once there are somewhat more points than x. Source: definition. */
export function besselJ(order: number, x: number): number {
  const points = Math.ceil(Math.abs(x)) + 24
  let sum = (1 + Math.cos(order * Math.PI)) / 2
  for (let i = 1; i < points; i++) {
    const theta = (Math.PI * i) / points
    sum += Math.cos(order * theta - x * Math.sin(theta))
  }
  return sum / points
}
