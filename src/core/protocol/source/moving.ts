type Moved<T> = { still: T; by: number }

/** Parts of a text that stand elsewhere than where they were read. However often one is moved, it is made of the part that
 * was read first (`stillOf`), which stays the same for as long as nothing in it changes. `placed` makes the part at its
 * new place, and is to move what is inside only when it is asked for: with each letter nearly everything moves, and
 * nearly nothing of it is looked at. */
export function moving<T extends object>(
  placed: (still: T, by: number) => T
): { stillOf(part: T): T; moved(part: T, by: number): T } {
  const moves = new WeakMap<T, Moved<T>>()
  return {
    stillOf: (part) => moves.get(part)?.still ?? part,
    moved(part, by) {
      if (by === 0) return part
      const { still, by: before } = moves.get(part) ?? { still: part, by: 0 }
      const move = { still, by: before + by }
      if (move.by === 0) return still
      const made = placed(still, move.by)
      moves.set(made, move)
      return made
    }
  }
}
