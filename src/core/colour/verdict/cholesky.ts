// Small symmetric positive systems of equations.

export type Matrix = number[][]

/** The lower triangle whose product with its transpose is `matrix`. */
export function cholesky(matrix: Matrix): Matrix {
  const lower = matrix.map((row) => row.map(() => 0))
  for (const [i, row] of matrix.entries()) {
    for (let j = 0; j <= i; j++) {
      let rest = row[j] as number
      for (let k = 0; k < j; k++) rest -= at(lower, i, k) * at(lower, j, k)
      ;(lower[i] as number[])[j] = i === j ? Math.sqrt(rest) : rest / at(lower, j, j)
    }
  }
  return lower
}

/** x where lower · lowerᵀ · x = right. */
export function solved(lower: Matrix, right: readonly number[]): number[] {
  const size = right.length
  const half: number[] = []
  for (let i = 0; i < size; i++) {
    let rest = right[i] as number
    for (let k = 0; k < i; k++) rest -= at(lower, i, k) * (half[k] as number)
    half.push(rest / at(lower, i, i))
  }
  const x = new Array<number>(size).fill(0)
  for (let i = size - 1; i >= 0; i--) {
    let rest = half[i] as number
    for (let k = i + 1; k < size; k++) rest -= at(lower, k, i) * (x[k] as number)
    x[i] = rest / at(lower, i, i)
  }
  return x
}

export function at(matrix: Matrix, i: number, j: number): number {
  return matrix[i]?.[j] ?? Number.NaN
}

export function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < one.length; i++) sum += (one[i] as number) * (other[i] as number)
  return sum
}
