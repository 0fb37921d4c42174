// Builds dist: the app, then its service worker with the list of files to keep for offline use.
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { distIsFresh, forgetBuild, rememberBuild, sourcePrint } from './freshness.mjs'

/** @param {string} root */
const buildServiceWorker = async (root) => {
  const { build } = await import('vite')
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    // Workbox asks for it; a browser has no `process`.
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: 'dist',
      emptyOutDir: false,
      modulePreload: false,
      rolldownOptions: {
        input: join(root, 'src/service-worker/index.ts'),
        // A classic script in one file at the top: its place is its scope, and not every browser takes a module worker.
        output: { entryFileNames: 'sw-without-list.js', format: 'iife', codeSplitting: false }
      }
    }
  })
}

/** @param {string} root */
const listForOffline = async (root) => {
  const { injectManifest } = await import('workbox-build')
  const without = join(root, 'dist', 'sw-without-list.js')
  const { count, size, warnings } = await injectManifest({
    swSrc: without,
    swDest: join(root, 'dist', 'sw.js'),
    globDirectory: join(root, 'dist'),
    globPatterns: ['**/*'],
    globIgnores: ['sw*.js'],
    // Vite puts a hash of the content into these names.
    dontCacheBustURLsMatching: /^assets\//,
    maximumFileSizeToCacheInBytes: 5_000_000
  })
  rmSync(without)
  // A file left out of the list is a file that is missing at the stove.
  if (warnings.length > 0) throw new Error(warnings.join('\n'))
  console.log(`Offline: ${count} files, ${Math.round(size / 1000)} kB`)
}

/** @param {string} root */
export const makeDist = async (root) => {
  const print = sourcePrint(root)
  forgetBuild(root)
  const { build } = await import('vite')
  await build({ root, logLevel: 'warn' })
  await buildServiceWorker(root)
  await listForOffline(root)
  rememberBuild(root, print)
}

/** @param {string} root */
export const makeDistIfStale = async (root) => {
  if (distIsFresh(root)) return
  console.log('Building ...')
  await makeDist(root)
}
