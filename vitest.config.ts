// The stages of npm test that vitest runs, each a project: what is in it, and on what it stands.
import { fileURLToPath } from 'node:url'
import { defineConfig, mergeConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { lookForChromium } from './src/desk/set-up/chromium.mjs'
import build from './vite.config.ts'

const minute = 60_000
const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Minutes each, with little to do in between: begun last, one of them would go on alone at the end. */
const long = ['hidden', 'readings', 'whistle', 'wet-mode', 'pedal', 'dip-gradient', 'ice-water', 'refused', 'kill']

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const nth = long.findIndex((name) => moduleId.endsWith(`/browser/${name}.test.ts`))
      return nth < 0 ? long.length : nth
    }
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b))
  }
}

export default mergeConfig(
  build,
  defineConfig({
    test: {
      // Every core: what is left to its own would leave one free for somebody at the keyboard.
      maxWorkers: '100%',
      sequence: { sequencer: LongFirst },
      projects: [
        {
          extends: true,
          test: {
            name: 'core',
            include: ['tests/core/**/*.test.ts'],
            // What is pure keeps nothing from one file to the next, and reading it anew for each cost as much as its tests.
            isolate: false,
            pool: 'threads',
            // A busy machine is slow, not broken.
            testTimeout: minute
          }
        },
        {
          extends: true,
          test: {
            name: 'unit',
            include: ['tests/**/*.test.{ts,tsx}'],
            setupFiles: ['tests/patient.ts'],
            testTimeout: minute,
            exclude: ['tests/{core,reference,simulation,browser,tidy}/**']
          }
        },
        { extends: true, test: { name: 'reference', include: ['tests/reference/**/*.test.ts'], testTimeout: minute } },
        {
          extends: true,
          test: { name: 'simulation', include: ['tests/simulation/**/*.test.ts'], testTimeout: 5 * minute }
        },
        { extends: true, test: { name: 'imports', include: ['tests/tidy/imports.test.ts'], testTimeout: minute } },
        {
          extends: true,
          test: {
            name: 'tidy',
            include: ['tests/tidy/**/*.test.ts'],
            exclude: ['tests/tidy/imports.test.ts'],
            testTimeout: minute
          }
        },
        {
          extends: true,
          test: {
            name: 'browser',
            include: ['tests/browser/**/*.test.ts'],
            // Most of a browser test waits, for a pot's clock, a finger's time or a pad that is dead for a moment: a running
            // page takes a tenth of a core, but opening one takes seconds of it: two cores carry four.
            maxWorkers: 4,
            // The files of a worker share its browser (stage/stage.ts).
            isolate: false,
            expect: { poll: { timeout: minute / 2 } },
            testTimeout: 5 * minute,
            hookTimeout: 2 * minute,
            env: {
              CHROME_PATH: process.env.CHROME_PATH ?? lookForChromium() ?? '',
              STRANDLINE_DIST: process.env.STRANDLINE_DIST ?? at('./dist')
            }
          }
        }
      ]
    }
  })
)
