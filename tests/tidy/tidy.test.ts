import { describe, expect, it } from 'vitest'
import { deadComplaints } from './dead-rules.ts'
import { fileSizeComplaints, functionSizeComplaints } from './size-rules.ts'
import { styleComplaints } from './style-rules.ts'
import { type File, readTree } from './tree.ts'
import {
  leftOpenComplaints,
  nameComplaints,
  registryComplaints,
  silencedTestComplaints,
  uncheckedComplaints
} from './word-rules.ts'

const tree = readTree()
const lines = (count: number): string => 'a()\n'.repeat(count)
const file = (path: string, text = ''): File => ({ path, text })

/** Each rule with something it must let pass and something it must see: a rule that sees nothing is no rule. */
const rules: { title: string; rule: (file: File) => string[]; good: File[]; bad: File[] }[] = [
  {
    title: 'no file has more than 400 lines',
    rule: fileSizeComplaints,
    good: [file('src/core/a.ts', lines(400)), file('package-lock.json', lines(900))],
    bad: [file('src/core/a.ts', lines(401)), file('tests/core/a.test.ts', lines(401)), file('src/ui/a.css', lines(401))]
  },
  {
    title: 'no function has more than 70 lines',
    rule: functionSizeComplaints,
    good: [file('src/core/a.ts', `const f = () => {\n${lines(68)}}\n`), file('src/core/a.ts', lines(300))],
    bad: [
      file('src/core/a.ts', `const f = () => {\n${lines(69)}}\n`),
      file('src/core/a.ts', `function f(): void {\n${lines(69)}}\n`),
      file('src/ui/a.tsx', `class A {\n  f(): void {\n${lines(69)}}\n}\n`),
      file('src/ui/a.tsx', `const F = () => (\n<p>\n${'text\n'.repeat(70)}</p>)\n`)
    ]
  },
  {
    title: 'every folder and file is named after a concept',
    rule: nameComplaints,
    good: [file('src/service-worker/index.ts'), file('src/core/pot/decide.ts'), file('src/ui/library.ts')],
    bad: [
      file(`src/${'uti' + 'ls'}/a.ts`),
      file(`src/core/pot-${'hel' + 'pers'}.ts`),
      file(`src/${'ser' + 'vice'}/a.ts`)
    ]
  },
  {
    title: 'nothing is left open',
    rule: leftOpenComplaints,
    good: [file('src/a.ts', 'const toDo = 1')],
    bad: [file('src/a.ts', `// ${'TO' + 'DO'}: later`), file('a.md', `${'FIX' + 'ME'} here`)]
  },
  {
    title: 'no test is silenced',
    rule: silencedTestComplaints,
    good: [file('a.test.ts', "it.each([1])('a', () => {})")],
    bad: ['only', 'skip', 'todo'].flatMap((word) => [
      file('a.test.ts', `it.${word}('a')`),
      file('a.test.ts', `describe.${word}('a')`)
    ])
  },
  {
    title: 'the compiler is never silenced whole',
    rule: uncheckedComplaints,
    good: [file('a.ts', '// @ts-expect-error: the wrong type is what is tested')],
    bad: [file('a.ts', `// @ts-${'ig' + 'nore'}`), file('a.ts', `// @ts-${'no' + 'check'}`)]
  },
  {
    title: 'no package registry is named',
    rule: registryComplaints,
    good: [file('package-lock.json', '"integrity": "sha512-x"')],
    bad: [file('package-lock.json', `"resolved": "https://${['registry', 'npmjs', 'org'].join('.')}/a"`)]
  },
  {
    title: 'colours and type are named in the tokens only',
    rule: styleComplaints,
    good: [
      file('src/ui/tokens.css', ':root { --ground: #fbf8f1 }'),
      file('src/ui/parts/a.css', '#face { color: var(--ink); font-size: var(--act) }'),
      file('src/ui/parts/a.css', '  font-size: 1.25em;'),
      file('src/ui/parts/a.css', '  font: inherit;'),
      file('src/ui/parts/a.tsx', "<a href='#add-stock'>")
    ],
    bad: [
      file('src/ui/parts/a.css', 'a { color: #fff }'),
      file('src/ui/screens/stove/style.css', '  background: rgb(0 0 0 / 50%);'),
      file('src/ui/screens/stove/style.css', '  font-size: 14px;'),
      file('src/ui/screens/stove/style.css', '  font-size: clamp(2rem, 11vw, 3.5rem);'),
      file('src/ui/screens/stove/style.css', '  font-family: serif;'),
      file('src/ui/parts/a.tsx', "<path fill='#b79b74' />"),
      file('src/ui/parts/a.tsx', "const shade = 'rgb(0, 0, 0)'")
    ]
  }
]

describe.each(rules)('$title', ({ rule, good, bad }) => {
  it('in the whole project', () => {
    expect(tree.flatMap(rule)).toEqual([])
  })

  it('and the rule lets pass what is right, and sees what is not', () => {
    expect(good.flatMap(rule)).toEqual([])
    for (const one of bad) expect(rule(one), `${one.path}: ${one.text.slice(0, 60)}`).toHaveLength(1)
  })
})

describe('no file is dead', () => {
  it('in the whole project', () => {
    expect(deadComplaints(tree)).toEqual([])
  })

  it('and the rule follows every way in', () => {
    const small = [
      file('src/app/main.tsx', "import './a.ts'\nimport './a.css'\nconst late = () => import('../ui/b.tsx')"),
      file('src/app/a.ts', "const tick = new Worker(new URL('../shell/ticker.ts', import.meta.url))"),
      file('src/app/a.css', "@import './b.css';"),
      file('src/app/b.css', ''),
      file('src/ui/b.tsx', "import type { C } from '../core/c.ts'"),
      file('src/core/c.ts', ''),
      file('src/shell/ticker.ts', ''),
      file('src/shell/twin.ts', ''),
      file('src/desk/d.ts', ''),
      file('tests/shell/twin.test.ts', "import '../../src/shell/twin.ts'")
    ]
    expect(deadComplaints(small)).toEqual([])
    const dead = [
      file('src/core/dead.ts', "import './dead-too.ts'"),
      file('src/core/dead-too.ts', ''),
      file('src/core/tested-only.ts', ''),
      file('src/ui/dead.css', ''),
      file('tests/core/tested-only.test.ts', "import '../../src/core/tested-only.ts'")
    ]
    expect(deadComplaints([...small, ...dead])).toHaveLength(4)
  })
})
