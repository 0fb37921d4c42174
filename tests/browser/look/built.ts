// The page of pictures, built as the app is built, on a host of its own.
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { hostOf } from '../../../src/desk/bench/host.ts'

export type LookPage = { address(query: string): string; stop(): Promise<void> }

export async function builtLook(): Promise<LookPage> {
  const folder = await mkdtemp(join(tmpdir(), 'strandline-look-'))
  await build({
    configFile: false,
    root: fileURLToPath(new URL('.', import.meta.url)),
    base: './',
    logLevel: 'error',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: { outDir: folder, emptyOutDir: true, assetsInlineLimit: 0, modulePreload: { polyfill: false } }
  })
  const host = await hostOf(folder)
  return {
    address: (query) => `${host.address}?${query}`,
    async stop() {
      await host.stop()
      await rm(folder, { recursive: true, force: true })
    }
  }
}
