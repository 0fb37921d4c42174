import { describe, expect, it } from 'vitest'
import { arrivals } from '../../src/app/arrivals.ts'
import type { BroughtIn } from '../../src/ui/sharing.ts'

const file = (name: string): File => new File(['x'], name)

function page(route: string, potsOn = false, bringIn?: (file: File) => Promise<BroughtIn>) {
  const went: string[] = []
  const came = async ({ name }: File): Promise<BroughtIn> => ({
    ok: true,
    name,
    title: name,
    draftId: `d ${name}`,
    runs: !name.startsWith('bad')
  })
  const made = arrivals({
    bringIn: bringIn ?? came,
    route: () => route,
    go: (to) => void went.push(to),
    potsOn: () => potsOn
  })
  const names = (): string[] => made.waiting.value.map(({ name }) => name)
  return { ...made, went, names }
}

describe('a file that comes to the open page', () => {
  it('is shown at once on the list of protocols and on a Stove without pots', async () => {
    for (const route of ['#/protocols', '#/stove']) {
      const { take, went, names } = page(route)
      await take([file('mine.yaml')])
      expect([went, names()], route).toEqual([['#/protocols/came/d%20mine.yaml'], []])
    }
  })

  it('with problems is shown where it can be mended', async () => {
    const { take, went } = page('#/protocols')
    await take([file('bad.yaml')])
    expect(went).toEqual(['#/protocols/write/d%20bad.yaml'])
  })

  it('takes nobody away from a live pot, a form or a text: it waits in a line until it is looked at', async () => {
    const busy: [string, boolean][] = [
      ['#/stove', true],
      ['#/stove/pot-a', true],
      ['#/start/dip', false],
      ['#/protocols/write/d1', false],
      ['#/dye-book', false]
    ]
    for (const [route, potsOn] of busy) {
      const { take, went, names, waiting, dismiss } = page(route, potsOn)
      await take([file('mine.yaml')])
      expect([went, names()], route).toEqual([[], ['mine.yaml']])
      if (waiting.value[0]) dismiss(waiting.value[0])
      expect(names()).toEqual([])
    }
  })

  it('with others beside it waits with them, each in its own line', async () => {
    const { take, went, names } = page('#/protocols')
    await take([file('a.yaml'), file('b.yaml')])
    expect([went, names()]).toEqual([[], ['a.yaml', 'b.yaml']])
  })

  it('among very many is left out, and that is told', async () => {
    const { take, waiting } = page('#/protocols')
    await take(Array.from({ length: 40 }, (_, i) => file(`${i}.yaml`)))
    expect(waiting.value).toHaveLength(11)
    expect(waiting.value.at(-1)).toMatchObject({
      ok: false,
      problem: { what: '40 files came at once; the first 10 were read.' }
    })
  })

  it('that can’t be read is told of, also when what reads it can’t be loaded', async () => {
    const { take, waiting, went } = page('#/protocols', false, () => Promise.reject(new Error('no network')))
    await take([file('a.yaml')])
    expect(went).toEqual([])
    expect(waiting.value).toMatchObject([{ ok: false, name: 'a.yaml', problem: { instead: 'Bring it in again.' } }])
  })
})
