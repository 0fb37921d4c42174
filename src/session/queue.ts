export type Queue = <T>(job: () => Promise<T>) => Promise<T>

/** Runs jobs one after another in the order they came, with nothing between them: no waiting, no gathering. A job that
 * throws does not stop the next. */
export function queue(): Queue {
  let last: Promise<unknown> = Promise.resolve()
  return (job) => {
    const result = last.then(job)
    last = result.catch(() => undefined)
    return result
  }
}
