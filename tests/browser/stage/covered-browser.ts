// A page that a test driver has hold of stays "visible" with another tab in front of it; here a tab that is covered is
// hidden, as on a dyer's device. Functions run there as a driver runs them, without the gesture its calls count as.
import { type RawPage, rawBrowser } from '../../../src/desk/bench/raw-browser.ts'

export type Target = {
  /** Runs a function there. Only JSON goes in and out. */
  evaluate<A, R>(work: (given: A) => R | Promise<R>, given?: A): Promise<R>
  toFront(): Promise<void>
}

export type CoveredBrowser = {
  send(method: string, params?: object): Promise<Record<string, unknown>>
  open(url: string): Promise<Target>
  /** The service worker of an address, once it runs. */
  worker(url: string): Promise<Target>
  close(): Promise<void>
}

export async function openCoveredBrowser(): Promise<CoveredBrowser> {
  const { order, open, worker, close } = await rawBrowser(process.env.CHROME_PATH)
  return {
    send: order,
    open: async (url) => targetOf(await open(url)),
    worker: async (url) => targetOf(await worker(url)),
    close
  }
}

function targetOf({ evaluate, toFront }: RawPage): Target {
  return {
    evaluate: (work, given) => evaluate(`(${work})(${given === undefined ? '' : JSON.stringify(given)})`),
    toFront
  }
}
