// What came up in the simulated days: a construct that never comes up is not tested.

export const countKinds = [
  'construct',
  'command',
  'event',
  'refusal',
  'outcome',
  'fault',
  'rung',
  'person',
  'check'
] as const
export type CountKind = (typeof countKinds)[number]

export class Counts {
  readonly by: Record<CountKind, Map<string, number>>

  constructor() {
    this.by = Object.fromEntries(countKinds.map((kind) => [kind, new Map()])) as Counts['by']
  }

  add(kind: CountKind, name: string, times = 1): void {
    const map = this.by[kind]
    map.set(name, (map.get(name) ?? 0) + times)
  }

  of(kind: CountKind, name: string): number {
    return this.by[kind].get(name) ?? 0
  }

  take(other: Counts): void {
    for (const kind of countKinds) for (const [name, times] of other.by[kind]) this.add(kind, name, times)
  }

  lines(): string[] {
    return countKinds.flatMap((kind) => {
      const named = [...this.by[kind]].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, times]) => `${name} ${times}`)
      return named.length === 0 ? [] : [`${kind}s: ${named.join(', ')}`]
    })
  }
}
