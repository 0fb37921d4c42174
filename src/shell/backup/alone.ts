/** Runs work while no other tab does work of that name; null: one does. Where there are no locks there is no telling. */
export async function whileAlone<T>(
  name: string,
  work: () => Promise<T>,
  locks: LockManager | undefined = globalThis.navigator?.locks
): Promise<T | null> {
  if (locks === undefined) return work()
  return locks.request(name, { ifAvailable: true }, (lock) => (lock === null ? null : work()))
}
