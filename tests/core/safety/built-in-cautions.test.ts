// The cautions that the built-in protocols bring by themselves: words in a protocol are what the rules go by.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cautionsBeforeStart } from '../../../src/core/safety/before-start.ts'
import { rules } from '../../../src/core/safety/rules.ts'
import { programmeFrom } from '../protocol/made.ts'

const folder = new URL('../../../protocols/', import.meta.url)
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'))
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8')
const cautionsOf = (file: string): string[] => cautionsBeforeStart(programmeFrom(textOf(file))).map(({ id }) => id)

const wanted: Record<string, string[]> = {
  'alum-mordant.yaml': ['mordant', 'powder', 'heat-on', 'heat-off', 'cooling'],
  'natural-dye.yaml': ['mordant', 'powder', 'heat-on', 'cooling'],
  'reactive-exhaust.yaml': ['alkali', 'heat-on'],
  'reactive-batch.yaml': ['alkali', 'heat-on'],
  'reactive-low-water.yaml': ['alkali', 'heat-on'],
  'scour-cellulose.yaml': ['alkali', 'heat-on'],
  'indigo-dip.yaml': ['hydros', 'hydros-and-acid'],
  'exit-gradient.yaml': ['steam', 'hot-lift', 'heat-on'],
  'hand-paint-steam.yaml': ['steam', 'heat-on'],
  'oven.yaml': ['oven', 'heat-on', 'heat-off'],
  'microwave.yaml': ['microwave'],
  'level-immersion.yaml': ['acid-vapour', 'hot-lift'],
  'strike-series.yaml': ['hot-lift', 'hot-liquor']
}

describe.each(Object.entries(wanted))('%s', (file, ids) => {
  it(`brings ${ids.join(', ')} by itself`, () => {
    const met = cautionsOf(file)
    expect(ids.filter((id) => !met.includes(id))).toEqual([])
  })
})

describe('a caution of a built-in protocol', () => {
  it.each(files)('in %s says what no rule says already, word for word', (file) => {
    const said = rules.flatMap(({ say }) => say.split('. ')).map((sentence) => sentence.replace(/\.$/, ''))
    const own = cautionsBeforeStart(programmeFrom(textOf(file))).filter(({ id }) => id.startsWith('own: '))
    expect(own.map(({ say }) => say).filter((say) => said.includes(say.replace(/\.$/, '')))).toEqual([])
  })

  it('is there where heat is on: each protocol that heats says to stay', () => {
    const heated = files.filter((file) => /- heat: (?!off)/.test(textOf(file)))
    expect(heated.length).toBeGreaterThan(20)
    expect(heated.filter((file) => !cautionsOf(file).includes('heat-on'))).toEqual([])
  })
})
