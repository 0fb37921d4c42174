// A whole photograph of a scene: light that differs over the frame, texture, ties, vignetting, noise, tone curve, JPEG.
import jpeg from 'jpeg-js'
import type { Photo } from '../../src/core/colour/index.ts'
import type { Camera } from './camera.ts'
import { exposed } from './camera.ts'
import { normals as noises, type PhotoChance } from './chance.ts'
import { type Box, height, type Scene, width } from './scene.ts'
import type { Spectrum } from './spectra.ts'

/** `second` lights the right end by the share `most`, falling to nothing at the left. */
export type Lighting = { first: Spectrum; second: Spectrum; most: number }

type Shot = { camera: Camera; lighting: Lighting; exposure: number; quality: number }

/** Bands run into one another over so many pixels. */
const soft = 10

export function render(chance: PhotoChance, scene: Scene, shot: Shot): Photo {
  const light = new Float32Array(width * height * 3)
  paint(light, { x: 0, y: 0, wide: width, high: height, shares: scene.ground }, shot)
  for (const box of [scene.card, ...scene.undyed, ...scene.series]) paint(light, box, shot)
  paintSkein(light, scene.bands, shot)
  const yarns = [...scene.undyed, ...scene.series, skeinOf(scene.bands)]
  const twist = twistOf(chance)
  for (const box of yarns) textured(chance, light, box, twist)
  for (const tie of scene.ties) paint(light, tie, shot)
  lint(chance, light, yarns)
  return developed(chance, light, shot)
}

const skeinOf = (bands: Box[]): Box => {
  const [first] = bands as [Box]
  return { ...first, wide: bands.reduce((sum, { wide }) => sum + wide, 0) }
}

const share = (x: number, most: number): number => (most * x) / width

/** The camera's values of it at the left and at the right end of the frame. */
function ends({ shares }: Box, { camera, lighting, exposure }: Shot): [number[], number[]] {
  const [one, other] = [lighting.first, lighting.second].map((light) =>
    exposed(camera, light, shares).map((value) => value * exposure)
  ) as [number[], number[]]
  return [one, one.map((value, nth) => value + lighting.most * ((other[nth] as number) - value))]
}

function paint(light: Float32Array, box: Box, shot: Shot): void {
  const [left, right] = ends(box, shot)
  for (let x = Math.max(0, Math.round(box.x)); x < Math.min(width, Math.round(box.x + box.wide)); x++) {
    const at = share(x, 1)
    const values = left.map((value, nth) => value + at * ((right[nth] as number) - value))
    column(light, box, x, values)
  }
}

function column(light: Float32Array, box: Box, x: number, values: number[]): void {
  const across = width
  const [r, g, b] = values as [number, number, number]
  for (let y = Math.max(0, Math.round(box.y)); y < Math.min(height, Math.round(box.y + box.high)); y++) {
    const to = 3 * (y * across + x)
    light[to] = r
    light[to + 1] = g
    light[to + 2] = b
  }
}

function paintSkein(light: Float32Array, bands: Box[], shot: Shot): void {
  const each = bands.map((band) => ends(band, shot))
  const whole = skeinOf(bands)
  const one = (bands[0] as Box).wide
  for (let x = Math.round(whole.x); x < Math.round(whole.x + whole.wide); x++) {
    const place = (x - whole.x) / one
    const band = Math.min(bands.length - 1, Math.max(0, Math.floor(place)))
    const toNext = Math.min(1, Math.max(0, 0.5 + ((place - band - 1) * one) / soft))
    const toLast = Math.min(1, Math.max(0, 0.5 - ((place - band) * one) / soft))
    const valuesOf = (nth: number): number[] => {
      const [left, right] = each[Math.min(bands.length - 1, Math.max(0, nth))] as [number[], number[]]
      return left.map((value, channel) => value + share(x, 1) * ((right[channel] as number) - value))
    }
    const [here, next, last] = [valuesOf(band), valuesOf(band + 1), valuesOf(band - 1)]
    column(
      light,
      whole,
      x,
      here.map(
        (value, nth) => value + toNext * ((next[nth] as number) - value) + toLast * ((last[nth] as number) - value)
      )
    )
  }
}

type Twist = { strand: number; ply: number; depth: number; slow: number }

/** All of it is the same yarn. */
const twistOf = (chance: PhotoChance): Twist => ({
  strand: chance.between(5, 9),
  ply: chance.between(7, 13),
  depth: chance.between(0.06, 0.2),
  slow: chance.between(0.005, 0.02)
})

/** Strands lie beside one another, plies wind round, and neither is quite even; laid anew, it lies a little otherwise. */
function textured(chance: PhotoChance, light: Float32Array, box: Box, twist: Twist): void {
  const { strand, ply, slow } = twist
  const depth = twist.depth * (1 + 0.1 * chance.normal())
  const phase = chance.between(0, 6)
  const across = width
  const [from, to] = [Math.max(0, Math.round(box.x)), Math.min(across, Math.round(box.x + box.wide))]
  for (let y = Math.round(box.y); y < Math.round(box.y + box.high); y++) {
    let drift = slow * chance.normal()
    for (let x = from; x < to; x++) {
      drift += 0.1 * (slow * chance.normal() - drift)
      const wave = Math.sin((2 * Math.PI * y) / strand + phase) + 0.5 * Math.sin((2 * Math.PI * (x + 2 * y)) / ply)
      const bright = Math.max(0.2, 1 - depth + (depth / 1.5) * wave + drift)
      const at = 3 * (y * across + x)
      light[at] = (light[at] as number) * bright
      light[at + 1] = (light[at + 1] as number) * bright
      light[at + 2] = (light[at + 2] as number) * bright
    }
  }
}

function lint(chance: PhotoChance, light: Float32Array, boxes: Box[]): void {
  for (const { x, y, wide, high } of boxes) {
    for (let n = 0; n < 4; n++) {
      const [left, top] = [x + wide * chance.unit(), y + high * chance.unit()]
      const values = [0.6, 0.6, 0.58].map((value) => value * chance.between(0.5, 1))
      for (let dx = 0; dx < 3; dx++)
        column(light, { x: left, y: top, wide: 1, high: 5, shares: [] }, Math.round(left) + dx, values)
    }
  }
}

/** A quarter of a million pixels: no function and no array is made for each. */
function developed(chance: PhotoChance, light: Float32Array, { camera, quality }: Shot): Photo {
  const { noise, codes, vignette } = camera
  const [across, down] = [width, height]
  const [red, green, blue] = camera.toRgb
  const data = Buffer.alloc(across * down * 4, 255)
  const last = codes.length - 1
  const dark = noise.read * noise.read
  const shot = noise.shot
  const corner = (across * across + down * down) / 4
  const raw = new Float64Array(3)
  const mask = noises.length - 1
  for (let y = 0; y < down; y++) {
    // A stretch of the table for each row: three draws a pixel would take longer than all the rest.
    const start = Math.floor(noises.length * chance.unit())
    for (let x = 0; x < across; x++) {
      const from = 3 * (y * across + x)
      const bright = 1 - (vignette * ((x - across / 2) ** 2 + (y - down / 2) ** 2)) / corner
      for (let nth = 0; nth < 3; nth++) {
        const value = (light[from + nth] as number) * bright
        raw[nth] =
          value + Math.sqrt(dark + shot * Math.max(0, value)) * (noises[(start + 3 * x + nth) & mask] as number)
      }
      const r = raw[0] as number
      const g = raw[1] as number
      const b = raw[2] as number
      const at = 4 * (y * across + x)
      data[at] = codeOf(codes, last, red[0] * r + red[1] * g + red[2] * b)
      data[at + 1] = codeOf(codes, last, green[0] * r + green[1] * g + green[2] * b)
      data[at + 2] = codeOf(codes, last, blue[0] * r + blue[1] * g + blue[2] * b)
    }
  }
  const packed = jpeg.encode({ data, width: across, height: down }, quality)
  const { data: opened } = jpeg.decode(packed.data, { useTArray: true })
  return { data: new Uint8ClampedArray(opened.buffer, opened.byteOffset, opened.length), width: across, height: down }
}

const codeOf = (codes: Uint8Array, last: number, value: number): number =>
  codes[Math.min(last, Math.max(0, Math.round(value * last)))] as number
