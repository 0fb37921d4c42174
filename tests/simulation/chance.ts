// Chance with a seed: the same seed gives the same day, whatever the machine.

/** sfc32 (small fast counting, 32 bit; C. Doty-Humphrey, PractRand; from memory), warmed up from the seed. */
export class Chance {
  #a: number
  #b: number
  #c: number
  #count = 1

  constructor(seed: number) {
    this.#a = seed | 0
    this.#b = Math.floor(seed / 0x1_0000_0000) | 0
    this.#c = 0x5eed
    for (let i = 0; i < 15; i++) this.next()
  }

  /** From 0 up to but not 1. */
  next(): number {
    const sum = (((this.#a + this.#b) | 0) + this.#count) | 0
    this.#count = (this.#count + 1) | 0
    this.#a = this.#b ^ (this.#b >>> 9)
    this.#b = (this.#c + (this.#c << 3)) | 0
    this.#c = (((this.#c << 21) | (this.#c >>> 11)) + sum) | 0
    return (sum >>> 0) / 0x1_0000_0000
  }

  /** True so often: 0 never, 1 always. */
  of(share: number): boolean {
    return this.next() < share
  }

  /** A whole number, both ends possible. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1))
  }

  pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.next() * from.length)] as T
  }

  /** One of the names, each as often as its weight says. */
  weighed<K extends string>(weights: Partial<Record<K, number>>): K {
    const entries = Object.entries(weights) as [K, number][]
    let left = this.next() * entries.reduce((sum, [, weight]) => sum + weight, 0)
    for (const [name, weight] of entries) {
      left -= weight
      if (left < 0) return name
    }
    return (entries.at(-1) as [K, number])[0]
  }

  /** A chance of its own that does not disturb this one. */
  branch(): Chance {
    return new Chance(Math.floor(this.next() * 0x1_0000_0000))
  }
}
