// Labels beside a strand: they slide off each other, and where even that does not help they gather ("8 bands").
// Knots never move.

/** `at`: the knot's place, px from the water upwards. */
export type Wish = { key: string; text: string; at: number; faint: boolean }
/** Over the water's own waves. */
const FLOOR_PX = 8
/** `at`: the middle of the label, px from the water upwards. `ats`: the knots it speaks for. */
export type Label = { key: string; text: string; at: number; ats: number[]; lines: number; faint: boolean }

export type Room = {
  /** px between the water and the rod. */
  height: number
  lineHeight: number
  /** How many letters a line takes, and how many lines a label may have. */
  lineLetters: number
  linesMost: number
  /** How far a label may slide from its knot before it gathers with its neighbour. */
  slideMost: number
}

type Group = { wishes: Wish[]; text: string; lines: number; want: number }

export function placeLabels(wishes: Wish[], room: Room): Label[] {
  let groups = [...wishes].sort((a, b) => a.at - b.at).map((wish) => grouped([wish], room))
  for (;;) {
    const ats = slide(groups, room)
    const worst = ats === null ? tightest(groups) : furthest(groups, ats, room)
    if (ats !== null && worst === null) {
      return groups.map((group, i) => labelOf(group, ats[i] as number))
    }
    if (worst === null || groups.length < 2) return groups.map((group) => labelOf(group, group.want))
    const merged = grouped([...(groups[worst] as Group).wishes, ...(groups[worst + 1] as Group).wishes], room)
    groups = [...groups.slice(0, worst), merged, ...groups.slice(worst + 2)]
  }
}

function labelOf(group: Group, at: number): Label {
  const first = group.wishes[0] as Wish
  const faint = group.wishes.every((w) => w.faint)
  return { key: first.key, text: group.text, at, ats: group.wishes.map((w) => w.at), lines: group.lines, faint }
}

function grouped(wishes: Wish[], room: Room): Group {
  const texts = wishes.map((w) => w.text)
  const text = wishes.length === 1 ? gatheredText(texts) : fitting([gatheredText(texts), `${wishes.length} acts`], room)
  const lines = Math.min(room.linesMost, wrap(text, room.lineLetters).length)
  const first = wishes[0] as Wish
  const last = wishes[wishes.length - 1] as Wish
  return { wishes, text, lines, want: (first.at + last.at) / 2 }
}

/** "Band 3", "Band 4", "Band 5" are "3 bands"; what differs is the first and how many more. */
export function gatheredText(texts: string[]): string {
  const [first = ''] = texts
  const stem = stemOf(first)
  const differs = texts.findIndex((text) => stem === null || stemOf(text) !== stem)
  const alike = differs < 0 ? texts.length : Math.max(1, differs)
  const rest = texts.length - alike
  const lead = alike > 1 && stem !== null ? `${alike} ${stem.toLowerCase()}s` : first
  return rest > 0 ? `${lead}, +${rest}` : lead
}

function stemOf(text: string): string | null {
  return /^(.*\D)\s*\d+$/.exec(text)?.[1]?.trim() ?? null
}

/** The first of some wordings that a label's room can hold; where none fits, the last. */
export function fitting(wordings: string[], room: Pick<Room, 'lineLetters' | 'linesMost'>): string {
  const fits = wordings.find((text) => {
    const lines = wrap(text, room.lineLetters)
    return lines.length <= room.linesMost && lines.every((line) => line.length <= room.lineLetters)
  })
  return fits ?? wordings[wordings.length - 1] ?? ''
}

/** Words on lines of at most `letters`; a word longer than a line stands alone on it. */
export function wrap(text: string, letters: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > letters) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  lines.push(line)
  return lines
}

/** Middles that keep the order and don't overlap, as near to the knots as can be; null: no room for all. */
function slide(groups: Group[], room: Room): number[] | null {
  const tall = groups.map((g) => g.lines * room.lineHeight)
  if (tall.reduce((sum, t) => sum + t, 0) > room.height - FLOOR_PX) return null
  // Pools of labels that touch move as one, to the mean of what they want (isotonic regression).
  type Pool = { from: number; offsets: number[]; start: number; tall: number }
  const pools: Pool[] = []
  for (const [i, group] of groups.entries()) {
    const size = tall[i] as number
    let pool: Pool = { from: i, offsets: [0], start: group.want - size / 2, tall: size }
    for (let below = pools[pools.length - 1]; below && below.start + below.tall > pool.start; ) {
      pools.pop()
      const offsets = [...below.offsets, ...pool.offsets.map((o) => o + (below as Pool).tall)]
      const wants = offsets.map((o, k) => (groups[(below as Pool).from + k] as Group).want - o)
      const halves = offsets.map((_, k) => (tall[(below as Pool).from + k] as number) / 2)
      const start = wants.reduce((sum, w, k) => sum + w - (halves[k] as number), 0) / wants.length
      pool = { from: below.from, offsets, start, tall: below.tall + pool.tall }
      below = pools[pools.length - 1]
    }
    pools.push(pool)
  }
  return settle(pools, tall, room)
}

/** Keeps the pools between the water and the rod. */
function settle(
  pools: { from: number; offsets: number[]; start: number; tall: number }[],
  tall: number[],
  room: Room
): number[] {
  let floor = FLOOR_PX
  for (const pool of pools) {
    pool.start = Math.max(pool.start, floor)
    floor = pool.start + pool.tall
  }
  let ceiling = room.height
  for (const pool of [...pools].reverse()) {
    pool.start = Math.min(pool.start, ceiling - pool.tall)
    ceiling = pool.start
  }
  return pools.flatMap((p) => p.offsets.map((o, k) => p.start + o + (tall[p.from + k] as number) / 2))
}

/** The neighbour pair to gather where a label slid too far: the nearer side of the furthest one. */
function furthest(groups: Group[], ats: number[], room: Room): number | null {
  let worst = -1
  let far = room.slideMost
  for (const [i, group] of groups.entries()) {
    const off = Math.abs((ats[i] as number) - group.want)
    if (off > far) {
      far = off
      worst = i
    }
  }
  if (worst < 0) return null
  const gap = (i: number): number =>
    i < 0 || i + 1 >= groups.length
      ? Number.POSITIVE_INFINITY
      : (groups[i + 1] as Group).want - (groups[i] as Group).want
  const pair = gap(worst - 1) < gap(worst) ? worst - 1 : worst
  return Number.isFinite(gap(pair)) ? pair : null
}

function tightest(groups: Group[]): number | null {
  let best: number | null = null
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i + 1 < groups.length; i++) {
    const gap = (groups[i + 1] as Group).want - (groups[i] as Group).want
    if (gap < least) {
      least = gap
      best = i
    }
  }
  return best
}
