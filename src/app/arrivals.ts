// Protocols that come to the open page by themselves: dropped on it, or opened from the file manager.
import { type ReadonlySignal, signal } from '@preact/signals'
import { type BroughtIn, routeOf } from '../ui/sharing.ts'

/** More at once are no deliberate act. */
const FILES_MOST = 10

export type Arrivals = {
  waiting: ReadonlySignal<readonly BroughtIn[]>
  dismiss(one: BroughtIn): void
  take(files: readonly File[]): Promise<void>
}

type Parts = {
  bringIn: (file: File) => Promise<BroughtIn>
  route: () => string
  go: (route: string) => void
  /** Is any pot on? */
  potsOn: () => boolean
}

export function arrivals({ bringIn, route, go, potsOn }: Parts): Arrivals {
  const waiting = signal<readonly BroughtIn[]>([])
  return {
    waiting,
    dismiss(one) {
      waiting.value = waiting.value.filter((other) => other !== one)
    },
    async take(files) {
      const came: BroughtIn[] = []
      for (const file of files.slice(0, FILES_MOST)) came.push(await bringIn(file).catch(() => notTaken(file.name)))
      if (files.length > FILES_MOST) came.push(tooMany(files.length))
      const [only] = came
      if (came.length === 1 && only?.ok && mayLeave(route(), potsOn())) go(routeOf(only))
      else waiting.value = [...waiting.value, ...came]
    }
  }
}

/** Nobody is taken away from a pot, from a form they fill in or from what they read: there it waits in a line. */
function mayLeave(route: string, potsOn: boolean): boolean {
  return /^#\/protocols\/?$/.test(route) || (!potsOn && /^#\/stove\b/.test(route))
}

function notTaken(name: string): BroughtIn {
  const what = 'This part could not be loaded, so the file was not read.'
  return refused(name, 'not-loaded', what, 'Bring it in again.')
}

function tooMany(count: number): BroughtIn {
  const what = `${count} files came at once; the first ${FILES_MOST} were read.`
  return refused('The others', 'too-many', what, `Bring in at most ${FILES_MOST} at a time.`)
}

function refused(name: string, why: string, what: string, instead: string): BroughtIn {
  return { ok: false, name, problem: { code: `file-${why}`, line: 1, column: 1, where: 'the file', what, instead } }
}
