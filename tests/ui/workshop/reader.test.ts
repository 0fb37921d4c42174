import { describe, expect, it } from 'vitest'
import { outlineOf } from '../../../src/core/protocol/edit/rows.ts'
import { AT_ONCE_LETTERS, AT_ONCE_MS, type Read, reader } from '../../../src/ui/screens/workshop/reader.ts'

const short = 'strandline: 1\ntitle: A\nsteps:\n  - rinse\n'
const long = (title: string): string =>
  `strandline: 1\ntitle: ${title}\n# ${'x'.repeat(AT_ONCE_LETTERS)}\nsteps:\n  - rinse\n`

const readIn =
  (tookMs: number) =>
  (text: string): Read => ({ text, outline: outlineOf(text), tookMs })

function deskWorker(tookMs = AT_ONCE_MS * 4) {
  const asked: string[] = []
  const port = {
    onmessage: null as ((event: { data: Read }) => void) | null,
    onerror: null as (() => void) | null,
    postMessage: (text: string) => void asked.push(text),
    terminate: () => {}
  }
  const answer = (): void => port.onmessage?.({ data: readIn(tookMs)(asked.at(-1) ?? '') })
  return { asked, port, answer }
}

const noWorker = (): never => {
  throw new Error('none')
}

describe('the reader', () => {
  it('reads a short text at once, without a worker', () => {
    const read = reader(noWorker).read(short, () => {})
    expect([read?.text, read?.outline.rows.length]).toEqual([short, 3])
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

  it('reads a long text at once where it was seen to be quick, and leaves it to the worker where it was not', () => {
    const { asked, port, answer } = deskWorker(AT_ONCE_MS / 2)
    let tookMs = AT_ONCE_MS / 2
    const reading = reader(
      () => port as never,
      (text) => readIn(tookMs)(text)
    )
    const at = (title: string): boolean => reading.read(long(title), () => {}) !== null
    expect(at('A')).toBe(false)
    answer()
    expect([at('B'), at('C'), asked]).toEqual([true, true, [long('A')]])
    tookMs = AT_ONCE_MS * 2
    // One slow reading is an accident, two are the machine.
    expect([at('D'), at('E'), at('F'), asked]).toEqual([true, true, false, [long('A'), long('F')]])
  })

  it('never gives a text at once while an older one is still being read', () => {
    const { port } = deskWorker()
    const reading = reader(() => port as never)
    reading.read(long('A'), () => {})
    expect(reading.read(short, () => {})).toBeNull()
  })

  it('reads by itself where there is no worker, and where the worker dies', () => {
    const told: string[] = []
    reader(noWorker).read(long('A'), ({ text }) => told.push(text))
    const { port } = deskWorker()
    const dying = reader(() => port as never)
    dying.read(long('B'), ({ text }) => told.push(text))
    dying.read(long('C'), ({ text }) => told.push(text))
    port.onerror?.()
    expect(told).toEqual([long('A'), long('C')])
  })
})
