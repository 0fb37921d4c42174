// @vitest-environment happy-dom
import { render } from '@testing-library/preact'
import jsQR from 'jsqr'
import { describe, expect, it } from 'vitest'
import { Qr } from '../../../src/ui/parts/qr.tsx'

const DOTS = 4

/** Paints what the SVG says, as a camera would see it: each module so many dots wide. */
function painted(svg: SVGElement): { dots: Uint8ClampedArray; side: number } {
  const modules = Number(svg.getAttribute('viewBox')?.split(' ')[2])
  const side = modules * DOTS
  const dots = new Uint8ClampedArray(side * side * 4).fill(255)
  const path = svg.querySelector('path')?.getAttribute('d') ?? ''
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let down = 0; down < DOTS; down++) {
      const from = ((Number(y) * DOTS + down) * side + Number(x) * DOTS) * 4
      for (let dot = 0; dot < DOTS; dot++) dots.fill(0, from + dot * 4, from + dot * 4 + 3)
    }
  }
  return { dots, side }
}

const read = (text: string): string | undefined => {
  const { container } = render(<Qr text={text} label="leads to a bottle" />)
  const { dots, side } = painted(container.querySelector('svg') as SVGElement)
  return jsQR(dots, side, side)?.data
}

describe('a QR code', () => {
  it('is read back by another reader: an id, an address, letters beyond ASCII', () => {
    const texts = ['6f1c2f0e-3a53-4a0e-9a0c-5b9c1f0e7a11', 'strandline:stock/6f1c2f0e', 'Stock Y, 1 % — käfergrün']
    for (const text of texts) expect(read(text)).toBe(text)
  })

  it('says in words what it leads to', () => {
    const { getByRole } = render(<Qr text="a" label="Stock Y, bottle 6f1c" />)
    expect(getByRole('img', { name: 'Stock Y, bottle 6f1c' })).toBeTruthy()
  })
})
