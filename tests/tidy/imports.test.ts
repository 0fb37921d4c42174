import { describe, expect, it } from 'vitest'
import { importComplaints } from './import-rules.ts'
import { importsOf } from './imported.ts'
import { isCode, readTree } from './tree.ts'

const sources = readTree('src').filter((file) => isCode(file.path) && !file.path.endsWith('.d.ts'))

describe('imports point towards core', () => {
  it('in every file under src', () => {
    expect(sources.length).toBeGreaterThan(20)
    expect(sources.flatMap(importComplaints)).toEqual([])
  })
})

describe('the rule sees', () => {
  const complaint = (path: string, text: string): string[] => importComplaints({ path, text })
  const known = 'src/core/pot/state.ts'

  it.each([
    [
      'core asking the session',
      'src/core/pot/a.ts',
      "import type { Session } from '../../session/types.ts'",
      'core may not ask session'
    ],
    [
      'protocol asking the engine',
      'src/core/protocol/a.ts',
      "import { b } from '../pot/state.ts'",
      'core/protocol may not ask core/pot'
    ],
    [
      'a type asked of a later room',
      'src/core/quantity/a.ts',
      "export type { PotState } from '../pot/state.ts'",
      'core/quantity may not ask core/pot'
    ],
    [
      'a type asked in passing',
      'src/core/quantity/a.ts',
      "type A = import('../pot/state.ts').PotState",
      'core/quantity may not ask core/pot'
    ],
    [
      'a late import',
      'src/core/quantity/a.ts',
      "const b = () => import('../pot/state.ts')",
      'core/quantity may not ask core/pot'
    ],
    [
      'a room of core without a place',
      'src/core/weather/a.ts',
      "import { b } from '../pot/state.ts'",
      'core has no room "weather"'
    ],
    ['core asking Node', 'src/core/pot/a.ts', "import { readFileSync } from 'node:fs'", 'core runs in a browser'],
    ['core drawing', 'src/core/pot/a.ts', "import { h } from 'preact'", 'core may not ask the package preact'],
    [
      'the session asking a package',
      'src/session/a.ts',
      "import { get } from 'idb-keyval'",
      'session may not ask the package idb-keyval'
    ],
    ['the session asking the shell', 'src/session/a.ts', "import '../app/main.tsx'", 'session may not ask app'],
    [
      'the shell asking more of the session than the types of its ports',
      'src/shell/a.ts',
      "import { b } from '../session/ports.ts'",
      'shell may not ask session'
    ],
    [
      'a screen asking the session',
      'src/ui/screens/stove/a.tsx',
      "import type { Session } from '../../../session/types.ts'",
      'ui may not ask session'
    ],
    ['the desk asking the app', 'src/desk/a.ts', "import '../app/main.tsx'", 'desk may not ask app'],
    ['a missing ending', 'src/core/pot/a.ts', "import { b } from './state'", 'the ending of the file is written out'],
    ['a file that is not there', 'src/core/pot/a.ts', "import { b } from './no-such-file.ts'", 'there is no such file'],
    [
      'something outside src',
      'src/core/pot/a.ts',
      "import { b } from '../../../vite.config.ts'",
      'src asks nothing outside src'
    ],
    ['a room nobody planned', 'src/weather/a.ts', '', 'there is no room "weather"']
  ])('%s', (_, path, text, expected) => {
    expect(complaint(path, text).join()).toContain(expected)
  })

  it('one screen asking another, and a part asking a screen', () => {
    const screen = complaint('src/ui/screens/shelf/a.tsx', "import { Dial } from '../stove/dial.tsx'")
    expect(screen.join()).toContain('the screen shelf may not ask the screen stove')
    const part = complaint('src/ui/parts/a.tsx', "import '../screens/stove/index.tsx'")
    expect(part.join()).toContain('ui/parts may not ask a screen')
    const frame = complaint('src/ui/app.tsx', "import '../ui/screens/stove/dial.tsx'")
    expect(frame.join()).toContain('ui/app.tsx may not ask a screen')
  })

  it('nothing wrong in what is allowed', () => {
    const path = 'src/core/record/a.ts'
    expect(complaint(path, "import type { PotState } from '../pot/state.ts'\nimport { z } from 'zod/mini'")).toEqual([])
    expect(complaint('src/shell/a.ts', "import type { ClockPort } from '../session/ports.ts'")).toEqual([])
    expect(complaint('src/desk/a.mjs', "import { join } from 'node:path'")).toEqual([])
  })

  it('the file meant, and the line', () => {
    const [found] = importsOf({ path: 'src/core/pot/a.ts', text: "\nimport type { PotState } from './state.ts'" })
    expect(found).toEqual({ from: './state.ts', path: known, typeOnly: true, line: 2 })
  })
})
