import { describe, expect, it } from 'vitest'
import { outlineOf } from '../../../src/core/protocol/edit/rows.ts'
import { AT_ONCE_MOST, type Read, reader } from '../../../src/ui/screens/workshop/reader.ts'

const short = 'strandline: 1\ntitle: A\nsteps:\n  - rinse\n'
const long = (title: string): string =>
  `strandline: 1\ntitle: ${title}\n# ${'x'.repeat(AT_ONCE_MOST)}\nsteps:\n  - rinse\n`

function deskWorker() {
  const asked: string[] = []
  const port = {
    onmessage: null as ((event: { data: Read }) => void) | null,
    onerror: null as (() => void) | null,
    postMessage: (text: string) => void asked.push(text),
    terminate: () => {}
  }
  const answer = (): void => {
    const text = asked.at(-1) ?? ''
    port.onmessage?.({ data: { text, outline: outlineOf(text) } })
  }
  return { asked, port, answer }
}

describe('the reader', () => {
  it('reads a short text at once, without a worker', () => {
    const told: Read[] = []
    reader(() => {
      throw new Error('none')
    }).read(short, (read) => told.push(read))
    expect(told.map(({ text, outline }) => [text, outline.rows.length])).toEqual([[short, 3]])
  })

  it('asks the worker for a long one, and of those typed meanwhile only for the latest', () => {
    const { asked, port, answer } = deskWorker()
    const told: string[] = []
    const reading = reader(() => port as never)
    for (const title of ['A', 'B', 'C']) reading.read(long(title), ({ text }) => told.push(text))
    expect([asked, told]).toEqual([[long('A')], []])
    answer()
    answer()
    expect([asked, told]).toEqual([
      [long('A'), long('C')],
      [long('A'), long('C')]
    ])
  })

  it('reads by itself where there is no worker, and where the worker dies', () => {
    const told: string[] = []
    reader(() => {
      throw new Error('none')
    }).read(long('A'), ({ text }) => told.push(text))
    const { port } = deskWorker()
    const dying = reader(() => port as never)
    dying.read(long('B'), ({ text }) => told.push(text))
    dying.read(long('C'), ({ text }) => told.push(text))
    port.onerror?.()
    expect(told).toEqual([long('A'), long('C')])
  })
})
