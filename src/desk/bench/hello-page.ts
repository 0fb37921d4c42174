import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'vite'

const html = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <title>Hello</title>
  </head>
  <body>
    <div id="app"></div>
    <script type="module" src="./hello.tsx"></script>
  </body>
</html>
`

const code = `import { render } from 'preact'
render(<h1 class="hello">Hello</h1>, document.getElementById('app')!)
`

/** The least page that the same tools can build: what a start is measured against. */
export async function buildHello(root: string, outDir: string): Promise<void> {
  // Inside node_modules, so that the packages are found from there.
  const source = join(root, 'node_modules', '.strandline', 'hello')
  mkdirSync(source, { recursive: true })
  writeFileSync(join(source, 'index.html'), html)
  writeFileSync(join(source, 'hello.tsx'), code)
  await build({
    root: source,
    configFile: false,
    logLevel: 'warn',
    base: './',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: { outDir, emptyOutDir: true, target: 'baseline-widely-available', modulePreload: { polyfill: false } }
  })
  rmSync(source, { recursive: true })
}
