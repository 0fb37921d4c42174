declare module 'newton-raphson-method' {
  /** A root of `f` near `start`; false where it found none. Without a derivative it takes one by differences. */
  export default function newtonRaphson(
    f: (x: number) => number,
    start: number,
    options?: { tolerance?: number; maxIterations?: number }
  ): number | false
}
