// The ear's page, built as the app is built and under the app's own content security policy, on a host of its own and
// not at the top of it.
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { hostOf } from '../../../src/desk/bench/host.ts'

export type EarBuilt = { address: string; folder: string; stop(): Promise<void> }

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** The line of index.html that says what the app may load. */
const policyOf = (html: string): string => {
  const policy = /<meta\s+http-equiv="Content-Security-Policy"[^>]*>/.exec(html)?.[0]
  if (policy === undefined) throw new Error('index.html has no content security policy')
  return policy
}

export async function builtEar(): Promise<EarBuilt> {
  const folder = await mkdtemp(join(tmpdir(), 'strandline-ear-'))
  const policy = policyOf(await readFile(at('../../../index.html'), 'utf8'))
  await build({
    configFile: false,
    root: at('.'),
    base: './',
    logLevel: 'error',
    plugins: [
      { name: 'policy', transformIndexHtml: (html) => html.replace('<meta charset="utf-8" />', `$&${policy}`) }
    ],
    build: {
      outDir: join(folder, 'some', 'place'),
      target: 'baseline-widely-available',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false }
    }
  })
  const host = await hostOf(folder)
  return {
    address: `${host.address}some/place/`,
    folder: join(folder, 'some', 'place'),
    async stop() {
      await host.stop()
      await rm(folder, { recursive: true, force: true })
    }
  }
}
