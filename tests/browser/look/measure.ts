// What a look at the screen measures, in the page itself: sizes, overlaps, cut words.

export type Box = {
  name: string
  left: number
  top: number
  right: number
  bottom: number
  width: number
  height: number
}
export type Look = {
  main: Box[]
  lesser: Box[]
  same: Box[]
  words: Box[]
  labels: Box[]
  /** Words that don't fit where they stand. */
  cut: string[]
  /** Height of a capital letter, px, of the first of each kind. */
  cap: { time: number | null; act: number | null; pot: number | null }
  /** Font size, px. */
  font: { time: number | null; act: number | null }
  scrolls: string[]
}

/** Runs in the page. */
export function measure(): Look {
  const call = document.querySelector('.call')
  const within: ParentNode = call ?? document
  const seen = (node: Element): boolean => node.getClientRects().length > 0 && !node.closest('.unseen')
  const all = (selector: string): Element[] => [...within.querySelectorAll(selector)].filter(seen)
  const box = (node: Element): Box => {
    const { left, top, right, bottom, width, height } = node.getBoundingClientRect()
    const name = (node.getAttribute('aria-label') ?? node.textContent ?? '').trim().slice(0, 40)
    return { name, left, top, right, bottom, width, height }
  }
  const capOf = (selector: string): number | null => {
    const node = within.querySelector(selector)
    const context = document.createElement('canvas').getContext('2d')
    if (!node || !context) return null
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(node)
    context.font = `${fontWeight} ${fontSize} ${fontFamily}`
    return context.measureText('H').actualBoundingBoxAscent
  }
  const fontOf = (selector: string): number | null => {
    const node = within.querySelector(selector)
    return node ? Number.parseFloat(getComputedStyle(node).fontSize) : null
  }
  const texts = all('p, h1, h2, time, .pad, .fit, .giant-fit, .bath-mark, .pot-tab-time, .gauge-say, .bench-name, li')
  const cut = texts
    .filter((node) => (node.textContent ?? '') !== '')
    .filter((node) => {
      // Tall letters may stand out of a tight line where nothing clips them.
      const clips = getComputedStyle(node).overflowY !== 'visible'
      return node.scrollWidth > node.clientWidth + 1 || (clips && node.scrollHeight > node.clientHeight + 2)
    })
    .map(
      (node) =>
        `${node.className || node.tagName}: ${node.textContent} ${node.scrollWidth}/${node.clientWidth} ${node.scrollHeight}/${node.clientHeight}`
    )
  const dots = all('text').filter((node) => node.textContent?.includes('…'))
  return {
    // A phone on its side has no height for a main pad over six lesser ones.
    main: all('.pad-main')
      .filter((node) => !(innerHeight < 560 && node.matches('.ask-same')))
      .map(box),
    lesser: all('.pad-lesser').map(box),
    same: all('.ask-same').map(box),
    words: all(
      '.clock, .stove-hands, .bath-act, .giant-fit > span, .bath-mark, .bath-line, .bath-chip, .gauge-say, .call-pot, .call-late, .call-act > span, .call-detail, .caution, .call-caution-line, .out-of-bath'
    ).map(box),
    labels: call ? [] : all('.label text').map(box),
    cut: [...cut, ...dots.map((node) => `label: ${node.textContent}`)],
    cap: {
      time: capOf('.giant-fit > span'),
      act: capOf(call ? '.call-act > span' : '.bath-act > span'),
      pot: capOf('.call-pot > span')
    },
    font: { time: fontOf('.giant-fit > span'), act: fontOf(call ? '.call-act > span' : '.bath-act > span') },
    scrolls: all('.call, .call-says, .call-answers, .stove, .bath, main')
      .filter((node) => node.scrollHeight > node.clientHeight + 1)
      .map((node) => `${node.className || node.tagName} ${node.scrollHeight}/${node.clientHeight}`)
  }
}

/** Pairs of boxes that lie over each other by more than a hair. */
export function overlaps(boxes: Box[]): string[] {
  const found: string[] = []
  for (const [i, one] of boxes.entries()) {
    for (const other of boxes.slice(i + 1)) {
      const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left)
      const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
      if (wide > 1 && high > 1)
        found.push(`"${one.name}" and "${other.name}" by ${Math.round(wide)} x ${Math.round(high)}`)
    }
  }
  return found
}

export function outside(boxes: Box[], width: number, height: number): string[] {
  return boxes
    .filter((b) => b.left < -1 || b.top < -1 || b.right > width + 1 || b.bottom > height + 1)
    .map(
      (b) => `"${b.name}" ${Math.round(b.left)},${Math.round(b.top)} to ${Math.round(b.right)},${Math.round(b.bottom)}`
    )
}
