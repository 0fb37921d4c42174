// Colours seen in one light told as they would look in another: von Kries' rule in the cone space of Bradford.

export type Xyz = { x: number; y: number; z: number }

type Triple = readonly [number, number, number]

/** K. M. Lam, 1985, as in the ICC specification (values of the shared reference table). */
const toCones: readonly [Triple, Triple, Triple] = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296]
]

const times = (rows: readonly [Triple, Triple, Triple], [x, y, z]: Triple): Triple => {
  const row = ([p, q, r]: Triple): number => p * x + q * y + r * z
  return [row(rows[0]), row(rows[1]), row(rows[2])]
}

const cross = ([a, b, c]: Triple, [p, q, r]: Triple): Triple => [b * r - c * q, c * p - a * r, a * q - b * p]

/** The inverse, by the cross products of its rows. */
const fromCones = ((): readonly [Triple, Triple, Triple] => {
  const [first, second, third] = toCones
  const [u, v, w] = [cross(second, third), cross(third, first), cross(first, second)]
  const size = first[0] * u[0] + first[1] * u[1] + first[2] * u[2]
  const row = (nth: 0 | 1 | 2): Triple => [u[nth] / size, v[nth] / size, w[nth] / size]
  return [row(0), row(1), row(2)]
})()

/** `colour` in a light whose white is `from`, told for a light whose white is `to`. The whites have a Y above 0. */
export function adapt(colour: Xyz, from: Xyz, to: Xyz): Xyz {
  const cones = ({ x, y, z }: Xyz): Triple => times(toCones, [x, y, z])
  const [seen, there, here] = [cones(colour), cones(from), cones(to)]
  const scaled: Triple = [
    (seen[0] * here[0]) / there[0],
    (seen[1] * here[1]) / there[1],
    (seen[2] * here[2]) / there[2]
  ]
  const [x, y, z] = times(fromCones, scaled)
  return { x, y, z }
}
