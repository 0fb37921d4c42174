import { describe, expect, it } from 'vitest'
import { Counts } from './counts.ts'
import { report } from './report.ts'

const print = (lines: string[]) => (line: string) => void lines.push(line)

describe('npm run simulate', () => {
  it('runs as many days as asked from the seed asked, says what came up, and ends well', async () => {
    const lines: string[] = []
    expect(await report(['--seeds', '3', '--from', '40'], print(lines))).toBe(0)
    expect(lines.join('\n')).toMatch(/events: .*StepStarted \d+/)
    expect(lines.at(-1)).toMatch(/^seeds 40 to 42: 0 failed, \d+ entries/)
  })

  it('names the seed of a day that failed, and ends badly', async () => {
    const lines: string[] = []
    const run = async (seed: number) => {
      return { seed, complaints: seed === 41 ? ['an entry is lost'] : [], counts: new Counts(), entries: 1 }
    }
    expect(await report(['--seeds', '3', '--from', '40'], print(lines), run)).toBe(1)
    expect(lines).toContain('seed 41: an entry is lost')
    expect(lines.join('\n')).toContain('1 failed')
  })

  it.each([[['--seeds', 'many']], [['--seeds', '0']], [['--from', '-1']], [['--sedes', '3']]])(
    'says how it is used when the order %j is not understood',
    async (argv) => {
      const lines: string[] = []
      expect(await report(argv, print(lines))).toBe(1)
      expect(lines).toEqual([expect.stringContaining('npm run simulate -- --seeds N [--from K]')])
    }
  )

  it('gives the same day for the same seed', async () => {
    const lines: string[][] = [[], []]
    for (const each of lines) await report(['--seeds', '2', '--from', '7'], print(each))
    expect(lines[0]?.slice(0, -1)).toEqual(lines[1]?.slice(0, -1))
  })
})
