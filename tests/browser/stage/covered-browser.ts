// Chromium as nobody drives it: started beside this process and spoken to over a pipe. A page that a test driver has
// hold of stays "visible" with another tab in front of it; here a tab that is covered is hidden, as on a dyer's device.
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Readable, Writable } from 'node:stream'
import { flags } from '../../../src/desk/bench/chromium.ts'

export type Target = {
  targetId: string
  /** Runs a function there, without the gesture that a driver's call counts as. Only JSON goes in and out. */
  evaluate<A, R>(work: (given: A) => R | Promise<R>, given?: A): Promise<R>
}

export type CoveredBrowser = {
  send(method: string, params?: object, sessionId?: string): Promise<Record<string, unknown>>
  open(url: string): Promise<Target>
  /** The service worker of an address, once it runs. */
  worker(url: string): Promise<Target>
  /** Puts a tab before the others of the window. */
  bringToFront(target: Target): Promise<void>
  close(): Promise<void>
}

type Info = { targetId: string; type: string; url: string }

export async function openCoveredBrowser(): Promise<CoveredBrowser> {
  const profile = mkdtempSync(join(tmpdir(), 'strandline-covered-'))
  const args = ['--headless', ...flags, '--remote-debugging-pipe', `--user-data-dir=${profile}`, 'about:blank']
  const child = spawn(process.env.CHROME_PATH ?? '', args, { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] })
  const send = talkTo(child)
  const attach = async (targetId: string): Promise<Target> => {
    const { sessionId } = await send('Target.attachToTarget', { targetId, flatten: true })
    return { targetId, evaluate: (work, given) => evaluate(send, String(sessionId), work, given) }
  }
  return {
    send,
    async open(url) {
      const { targetId } = await send('Target.createTarget', { url })
      return attach(String(targetId))
    },
    async worker(url) {
      for (;;) {
        const { targetInfos } = (await send('Target.getTargets')) as { targetInfos: Info[] }
        const found = targetInfos.find((info) => info.type === 'service_worker' && info.url.startsWith(url))
        if (found) return attach(found.targetId)
        await new Promise((again) => setTimeout(again, 50))
      }
    },
    bringToFront: async ({ targetId }) => void (await send('Target.activateTarget', { targetId })),
    async close() {
      if (child.exitCode === null) {
        const gone = new Promise((done) => child.once('exit', done))
        void send('Browser.close').catch(() => {})
        await gone
      }
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
    }
  }
}

type Answer = { id?: number; result?: Record<string, unknown>; error?: { message: string } }

/** Messages are JSON, each ended by a zero octet. */
function talkTo(child: ChildProcess): CoveredBrowser['send'] {
  const [to, from] = [child.stdio[3] as Writable, child.stdio[4] as Readable]
  const waiting = new Map<number, (answer: Answer) => void>()
  let last = 0
  let rest = Buffer.alloc(0)
  from.on('data', (piece: Buffer) => {
    rest = Buffer.concat([rest, piece])
    for (let end = rest.indexOf(0); end >= 0; end = rest.indexOf(0)) {
      const answer = JSON.parse(rest.toString('utf8', 0, end)) as Answer
      rest = rest.subarray(end + 1)
      if (answer.id !== undefined) waiting.get(answer.id)?.(answer)
    }
  })
  child.once('exit', () => {
    for (const answer of waiting.values()) answer({ error: { message: 'the browser is gone' } })
  })
  return (method, params = {}, sessionId) =>
    new Promise((resolve, reject) => {
      last += 1
      const id = last
      waiting.set(id, ({ result, error }) => {
        waiting.delete(id)
        if (error) reject(new Error(`${method}: ${error.message}`))
        else resolve(result ?? {})
      })
      to.write(`${JSON.stringify({ id, method, params, sessionId })}\0`)
    })
}

type Evaluated<R> = { result: { value: R }; exceptionDetails?: { text: string; exception?: { description?: string } } }

async function evaluate<A, R>(
  send: CoveredBrowser['send'],
  sessionId: string,
  work: (given: A) => R | Promise<R>,
  given?: A
): Promise<R> {
  const expression = `(${work})(${given === undefined ? '' : JSON.stringify(given)})`
  const more = { awaitPromise: true, returnByValue: true, userGesture: false }
  const answer = await send('Runtime.evaluate', { expression, ...more }, sessionId)
  const { result, exceptionDetails: failed } = answer as unknown as Evaluated<R>
  if (failed) throw new Error(failed.exception?.description ?? failed.text)
  return result.value
}
