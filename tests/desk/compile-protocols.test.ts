import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { compileProtocols } from '../../src/desk/set-up/compile-protocols.ts'
import { root } from '../tidy/tree.ts'

const folder = mkdtempSync(join(tmpdir(), 'strandline-protocols-'))
afterAll(() => rmSync(folder, { recursive: true }))

it('every built-in protocol goes into the app with its text, and what went in is what was read', async () => {
  const compiled = await compileProtocols(join(root, 'protocols'))
  expect(compiled.length).toBeGreaterThanOrEqual(6)
  for (const { text, protocol } of compiled) expect(text).toContain(protocol.title)
  // It travels as JSON: whatever JSON can't carry would be lost on the way.
  expect(JSON.parse(JSON.stringify(compiled))).toEqual(compiled)
})

it('the build stops at a protocol with a problem, and names file, line and column of every one', async () => {
  writeFileSync(
    join(folder, 'a.yaml'),
    'strandline: 1\ntitle: A\nsteps:\n- soak: {for: at least 30 min}\n- simmer: {}\n'
  )
  writeFileSync(join(folder, 'b.yaml'), 'strandline: 1\ntitle: B\nsteps:\n- hold: {for: soup}\n')
  await expect(compileProtocols(folder)).rejects.toThrow(/protocols\/a\.yaml:5:\d+ [\s\S]*protocols\/b\.yaml:4:\d+ /)
})
