import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { findChromium } from '../../src/desk/set-up/chromium.mjs'
import { countReport } from '../../src/desk/set-up/counts.mjs'
import { distIsFresh, forgetBuild, rememberBuild, sourcePrint } from '../../src/desk/set-up/freshness.mjs'
import { missingPackages } from '../../src/desk/set-up/packages.mjs'
import { readPort, sayPortProblem } from '../../src/desk/set-up/port.mjs'
import { findProgram } from '../../src/desk/set-up/programs.mjs'

let root = ''
const write = (path: string, content: unknown): void => {
  mkdirSync(join(root, path, '..'), { recursive: true })
  writeFileSync(join(root, path), typeof content === 'string' ? content : JSON.stringify(content))
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'strandline-set-up-'))
})
afterEach(() => rmSync(root, { recursive: true }))

describe('npm start installs', () => {
  const one = { version: '1.0.0' }
  const lock = { packages: { '': {}, 'node_modules/a': one, 'node_modules/b': { ...one, optional: true } } }

  it('what a fresh clone lacks, but not what is for another machine', () => {
    write('package-lock.json', lock)
    expect(missingPackages(root)).toEqual(['node_modules/a'])
  })

  it('nothing when all is there', () => {
    write('package-lock.json', lock)
    write('node_modules/.package-lock.json', { packages: { 'node_modules/a': one } })
    expect(missingPackages(root)).toEqual([])
  })

  it('what is there in another version', () => {
    write('package-lock.json', lock)
    write('node_modules/.package-lock.json', { packages: { 'node_modules/a': { version: '0.9.0' } } })
    expect(missingPackages(root)).toEqual(['node_modules/a'])
  })
})

describe('npm start builds', () => {
  beforeEach(() => {
    write('src/a.ts', 'a')
    write('protocols/a.yaml', 'b')
    write('dist/index.html', '')
    write('dist/sw.js', '')
    rememberBuild(root, sourcePrint(root))
  })

  it('nothing when the sources are those of the last build', () => {
    write('src/a.ts', 'a')
    write('README.md', 'not a source')
    expect(distIsFresh(root)).toBe(true)
  })

  it.each([
    ['a changed source', 'src/a.ts'],
    ['a changed protocol', 'protocols/a.yaml'],
    ['a new file', 'public/icon.svg'],
    ['other packages', 'package-lock.json']
  ])('again after %s', (_, path) => {
    write(path, 'changed')
    expect(distIsFresh(root)).toBe(false)
  })

  it('again when a build was broken off, or dist is not whole', () => {
    forgetBuild(root)
    expect(distIsFresh(root)).toBe(false)
    rememberBuild(root, sourcePrint(root))
    rmSync(join(root, 'dist/sw.js'))
    expect(distIsFresh(root)).toBe(false)
  })
})

describe('the port', () => {
  it('is 4173 unless PORT says another one', () => {
    expect([readPort(undefined), readPort(' 8080 ')]).toEqual([
      { ok: true, port: 4173 },
      { ok: true, port: 8080 }
    ])
  })

  it.each(['abc', '0', '65536', '-1', '80.5', '0x50', '1e3'])(
    'can not be %s, and the answer says what would be right',
    (entered) => {
      const read = readPort(entered)
      expect(read.ok ? '' : read.say).toContain(entered)
      expect(read.ok ? '' : read.say).toContain('from 1 to 65535')
    }
  )

  it('when taken, is named together with a way out that is another port', () => {
    expect(sayPortProblem(4173, 'EADDRINUSE')).toMatch(/Port 4173 is taken.*PORT=4174 npm start/)
    expect(sayPortProblem(8080, 'EADDRINUSE')).toMatch(/Port 8080 is taken.*PORT=4173 npm start/)
  })
})

it('a CHROME_PATH that leads nowhere is told, and no other browser is taken in its place', () => {
  const before = process.env.CHROME_PATH
  process.env.CHROME_PATH = '/no/such/browser'
  const found = findChromium()
  if (before === undefined) delete process.env.CHROME_PATH
  else process.env.CHROME_PATH = before
  expect(found.ok ? '' : found.say).toContain('CHROME_PATH is "/no/such/browser"')
})

describe('a program of the machine', () => {
  it('is found on the path, or in the places where it may lie, and only what can be run', () => {
    const before = process.env.PATH
    process.env.PATH = join(root, 'path')
    write('path/reader', '')
    write('place/other', '')
    chmodSync(join(root, 'place/other'), 0o755)
    try {
      expect(findProgram(['reader'])).toBeNull()
      chmodSync(join(root, 'path/reader'), 0o755)
      expect(findProgram(['reader'])).toBe(join(root, 'path/reader'))
      expect(findProgram(['other'])).toBeNull()
      expect(findProgram(['other', 'reader'], [join(root, 'place')])).toBe(join(root, 'path/reader'))
      expect(findProgram(['other'], [join(root, 'place')])).toBe(join(root, 'place/other'))
    } finally {
      process.env.PATH = before
    }
  })
})

describe('npm test counts', () => {
  const test = (status: string): object => ({ status, fullName: status })
  const report = (testResults: object[], exitCode: number | null): { passed: number; failed: number } => {
    write('report.json', { testResults })
    const { passed, failed } = countReport(join(root, 'report.json'), exitCode)
    return { passed, failed }
  }

  it('what passed and what failed', () => {
    const file = { name: 'a', status: 'failed', assertionResults: [test('passed'), test('passed'), test('failed')] }
    expect(report([file], 1)).toEqual({ passed: 2, failed: 1 })
    expect(report([{ name: 'a', status: 'passed', assertionResults: [test('passed')] }], 0)).toEqual({
      passed: 1,
      failed: 0
    })
  })

  it.each(['pending', 'skipped', 'todo'])('a %s test as failed', (status) => {
    const file = { name: 'a', status: 'passed', assertionResults: [test('passed'), test(status)] }
    expect(report([file], 0)).toEqual({ passed: 1, failed: 1 })
  })

  it('a file that could not be loaded as failed', () => {
    expect(report([{ name: 'a', status: 'failed', message: 'no such module', assertionResults: [] }], 1)).toEqual({
      passed: 0,
      failed: 1
    })
  })

  it('a file whose clean-up broke as failed, beside its tests', () => {
    const file = { name: 'a', status: 'failed', message: 'afterAll', assertionResults: [test('passed')] }
    expect(report([file], 1)).toEqual({ passed: 1, failed: 1 })
  })

  it('a stage without tests, one that broke off, and one without a report as failed', () => {
    expect(report([], 0)).toEqual({ passed: 0, failed: 1 })
    const good = { name: 'a', status: 'passed', assertionResults: [test('passed')] }
    expect(report([good], 1)).toEqual({ passed: 1, failed: 1 })
    expect(report([good], null)).toEqual({ passed: 1, failed: 1 })
    expect(countReport(join(root, 'none.json'), null).failed).toBe(1)
  })
})
