import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin } from 'vite'
import { builtInProtocols } from './src/desk/set-up/compile-protocols.ts'

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** The policy in index.html holds for what we ship; the development server itself writes style elements into the page. */
const policyOnlyWhenBuilt: Plugin = {
  name: 'strandline:policy',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, '')
}

const fromTheStart = new Map<string, boolean>()

type Modules = { getModuleInfo(id: string): { isEntry: boolean; importers: readonly string[] } | null }

/** What the first drawing needs lies in one file: each module that a later screen shares with it would else become a file
 * of its own, and many small files are larger than one (by 2 kB of 60 when this was written). */
function ofTheStart(id: string, modules: Modules): string | null {
  return isOfTheStart(id, modules) ? 'start' : null
}

function isOfTheStart(id: string, modules: Modules): boolean {
  const known = fromTheStart.get(id)
  if (known !== undefined) return known
  // Modules may import one another in a ring; none is of the start only because of itself.
  fromTheStart.set(id, false)
  const info = modules.getModuleInfo(id)
  const found = info !== null && (info.isEntry || info.importers.some((importer) => isOfTheStart(importer, modules)))
  fromTheStart.set(id, found)
  return found
}

export default defineConfig({
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [builtInProtocols(at('./protocols')), policyOnlyWhenBuilt],
  build: {
    target: 'baseline-widely-available',
    // Nothing inlined: the content security policy lets fonts and workers come from files only.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: ofTheStart }] } } }
  }
})
