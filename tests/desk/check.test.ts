import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'strandline-check-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const check = (...files: string[]): { code: number | null; out: string; err: string } => {
  const done = spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', 'src/desk/check.ts', ...files], {
    cwd: root,
    encoding: 'utf8'
  })
  return { code: done.status, out: done.stdout, err: done.stderr }
}

describe('npm run check', () => {
  it('prints every problem as FILE:LINE:COL what (what instead), and fails', () => {
    const file = join(folder, 'broken.yaml')
    writeFileSync(file, 'strandline: 1\ntitle: T\nsteps:\n  - hodl: 6 min\n  - hold: {for: 30}\n')
    const { code, err } = check(file, 'protocols/indigo-dip.yaml')
    expect(code).toBe(1)
    expect(err.trim().split('\n')).toEqual([
      `${file}:4:5 There is no step hodl. (write hold)`,
      `${file}:5:17 hold: "30" can't be read. (Add the unit: 30 s, 30 min or 30 h.)`
    ])
  }, 60_000)

  it('passes good files, and says which', () => {
    const { code, out } = check('protocols/dip-gradient.yaml', 'protocols/lab-dip-exhaust.yaml')
    expect([code, out]).toEqual([0, 'protocols/dip-gradient.yaml: good\nprotocols/lab-dip-exhaust.yaml: good\n'])
  }, 60_000)

  it('says plainly that a file is not there, is a folder, or was not named', () => {
    const { code, err } = check(join(folder, 'gone.yaml'), folder)
    expect(code).toBe(1)
    expect(err).toContain("gone.yaml: can't be read: there is no such file")
    expect(err).toContain('it is a folder')
    expect(check()).toMatchObject({ code: 1, err: expect.stringContaining('Name the protocol files') })
  }, 60_000)
})
