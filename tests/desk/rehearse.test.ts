import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'strandline-rehearse-'))
const file = (name: string): string => join(folder, name)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Ten minutes, an act of so many minutes of hands, five minutes. */
const turning = (title: string, late: string, handsMin: number): string =>
  `strandline: 1\ntitle: ${title}\nlate: ${late}\nsteps:\n- hold: 10 min\n- do: {say: Turn it, hands: ${handsMin} min}\n- hold: 5 min\n`

beforeAll(() => {
  writeFileSync(file('plum.yaml'), turning('Plum', 'shift', 3))
  writeFileSync(file('moss.yaml'), turning('Moss', 'shift', 3))
  writeFileSync(file('strict.yaml'), turning('Strict', 'off-protocol', 1))
  writeFileSync(file('slow.yaml'), turning('Slow', 'off-protocol', 3))
  writeFileSync(file('stiff.yaml'), turning('Stiff', 'absorb', 3).replace('- hold: 5 min\n', ''))
  const asks = 'inputs:\n  n: {ask: How many?, kind: count, default: 1, least: 1, most: 9}\n'
  writeFileSync(
    file('asks.yaml'),
    `strandline: 1\ntitle: Asks\n${asks}steps:\n- repeat: {times: n, steps: [hold: 1 min]}\n- until: {id: clear, ask: {grade: rinse, enough: clear}, at most: 3, steps: [rinse]}\n`
  )
  writeFileSync(file('answers.yaml'), 'clear: [half, clear]\n')
})

const rehearse = (...args: string[]): { code: number | null; lines: string[]; err: string } => {
  const done = spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', 'src/desk/rehearse.ts', ...args], {
    cwd: root,
    encoding: 'utf8'
  })
  return { code: done.status, lines: done.stdout.split('\n'), err: done.stderr }
}

/** The last line of each pot, without its count of sounds. */
const ends = (lines: string[]): (string | undefined)[] => lines.map((line) => line.split(';')[0])

describe('npm run rehearse with one file', { timeout: 120_000 }, () => {
  it('prints its timeline, heeds inputs and answers, and gives the journal when asked', () => {
    const { code, lines } = rehearse(file('asks.yaml'), '--set', 'n=3', '--answers', file('answers.yaml'))
    expect(code).toBe(0)
    expect(lines.filter((line) => line.includes('Hold over'))).toHaveLength(3)
    expect(lines.filter((line) => /rinse: (half|clear)/.test(line))).toHaveLength(2)
    const [first] = rehearse(file('plum.yaml'), '--json').lines
    expect(JSON.parse(first ?? '')).toMatchObject({ seq: 1, event: { type: 'PotStarted' } })
  })

  it('refuses what is meant for several', () => {
    expect(rehearse(file('plum.yaml'), '--after', '3')).toMatchObject({
      code: 1,
      err: expect.stringMatching(/more than one file/)
    })
  })
})

describe('npm run rehearse with several files', { timeout: 120_000 }, () => {
  it('prints one timeline with the pot beside each line, and where they want hands at once', () => {
    // Both are called at 10 min; the first keeps the hands for 3 min, so the second is done at 13 and ends at 18.
    const { code, lines } = rehearse(file('plum.yaml'), file('moss.yaml'))
    expect(code).toBe(0)
    const timeline = lines.filter((line) => /^\d:\d\d:\d\d {2}(plum|moss) {2}/.test(line))
    expect(timeline).toContain('0:10:00  plum  do: Turn it')
    expect(timeline).toContain('0:13:00  moss  do: Turn it')
    expect(timeline).toEqual([...timeline].sort((a, b) => a.slice(0, 7).localeCompare(b.slice(0, 7))))
    expect(ends(lines)).toContain('plum  all steps done at 0:15:00')
    expect(ends(lines)).toContain('moss  all steps done at 0:18:00')
    expect(lines).toContain('Hands are wanted by two pots at once, one time:')
    expect(lines).toContain('0:10:00  plum (Turn it) first; moss (Turn it) waits 0:03:00, and can wait')
  })

  it('says what can’t wait so long, and who should go first', () => {
    // Under this rule an act is late when its own minute of hands is over: two of the three minutes.
    const { lines } = rehearse(file('plum.yaml'), file('strict.yaml'))
    expect(lines).toContain(
      '0:10:00  plum (Turn it) first; strict (Turn it) waits 0:03:00, and can wait 0:01:00: 0:02:00 late; strict first would suit both'
    )
    expect(lines.join('\n')).toMatch(/0:13:00 {2}strict +off protocol/)
    // Three minutes of hands are three minutes of leave, and one of them is enough.
    expect(rehearse(file('slow.yaml'), file('strict.yaml')).lines.at(-2)).toMatch(
      /^0:10:00 {2}slow .*; strict first would suit both$/
    )
  })

  it('advises no other order where that would be late too', () => {
    // Nothing comes after the first one's act that could take up the minute it would wait.
    const { lines } = rehearse(file('stiff.yaml'), file('strict.yaml'))
    expect(lines).toContain(
      '0:10:00  stiff (Turn it) first; strict (Turn it) waits 0:03:00, and can wait 0:01:00: 0:02:00 late'
    )
  })

  it('started apart as told they go past each other', () => {
    const { lines } = rehearse(file('plum.yaml'), file('moss.yaml'), file('plum.yaml'), '--after', '3,6')
    expect(lines).toContain('0:03:00  moss    start')
    expect(lines).toContain('0:06:00  plum 2  start')
    expect(ends(lines)).toContain('plum 2  all steps done at 0:21:00')
    expect(lines).toContain('No two pots want hands at once.')
  })

  it('refuses what is meant for one, and starts that fit no file', () => {
    const both = [file('plum.yaml'), file('moss.yaml')]
    for (const option of [['--json'], ['--set', 'n=1'], ['--answers', file('answers.yaml')]]) {
      const { code, err, lines } = rehearse(...both, ...option)
      expect([code, lines]).toEqual([1, ['']])
      expect(err).toContain(`${option[0]} is meant for one file alone, and 2 are named`)
    }
    for (const after of ['1,2', 'soon', '-3']) {
      const { code, err } = rehearse(...both, `--after=${after}`)
      expect([code, err]).toEqual([1, expect.stringContaining('one for each, such as --after 20')])
    }
  })
})
