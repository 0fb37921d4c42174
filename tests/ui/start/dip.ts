// A small protocol in the language itself, read by the reader, for looking at the screens around it. Values invented.
import { readProtocol } from '../../../src/core/protocol/read.ts'
import type { StoredProtocol } from '../../../src/ui/kitchen.ts'

const text = `strandline: 1
title: Dip gradient, wool
about: One skein lowered band by band into a hot bath.
use: To see whether a mixed dye splits along the skein.
trouble: Bands blur where the skein swings.
demo: true
liquor: 30:1
inputs:
  bands: {ask: Bands, kind: count, default: 3, least: 2, most: 20}
  each: {ask: Time for each band, kind: time, default: 6 min, least: 1 min, most: 30 min}
  strike: {ask: Strike, kind: choice, choices: [slow, fast], default: slow}
materials:
  acid: {kind: acid, label: white vinegar, strength: 5 %, amount: 2 % owf}
  stock Y: {kind: stock, strength: 1 %, amount: 0.8 % owf}
steps:
- fill: {liquor: 30:1}
- add: {id: A1, amount: 1/2 of acid}
- add: {amount: all of stock Y}
- heat: {to: 80..85 °C, rate: 2 °C/min}
- for each:
    id: dip
    band: {from: 1, to: bands}
    steps:
    - lower: {to: band, hands: 30 s}
    - hold: {for: '{each}'}
- lift: {to: rod over the pot, out of bath: at most 3 min}
- add: {id: A2, amount: 1/2 of acid}
- enter: {}
- hold: {for: 20 min}
- heat: off
- cool: {until: at least 30 min and until 40 °C}
`

export function dip(header: Record<string, string> = {}): StoredProtocol {
  const lines = Object.entries(header).map(([key, value]) => `${key}: ${value}\n`)
  const read = readProtocol(text.replace('demo: true\n', `demo: true\n${lines.join('')}`))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return { id: 'dip', file: 'dip.yaml', text, protocol: read.protocol, from: 'built-in' }
}
