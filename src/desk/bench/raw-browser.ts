// Chromium as a dyer has it, spoken to by its own protocol through a pipe. A driver keeps every page it holds awake and
// in front; only without one can a page be hidden, slowed and frozen.
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Readable, Writable } from 'node:stream'
import { flags } from './chromium.ts'

export type RawPage = {
  /** What an expression gives; a promise is waited for. `gesture`: as if a finger had just touched the page. */
  evaluate<T>(expression: string, gesture?: boolean): Promise<T>
  /** Until the expression is true. */
  until(expression: string, withinMs?: number): Promise<void>
  order(method: string, params?: object): Promise<unknown>
  toFront(): Promise<void>
}

export type RawBrowser = {
  /** `before`: a script that runs in the page before its own. */
  open(url: string, before?: string): Promise<RawPage>
  /** The service worker of an address, once it runs. */
  worker(url: string): Promise<RawPage>
  order: Order
  close(): Promise<void>
}

type Answer = { id?: number; result?: Record<string, unknown>; error?: { message: string } }
type Info = { targetId: string; type: string; url: string }
export type Order = (method: string, params?: object, sessionId?: string) => Promise<Record<string, unknown>>

export async function rawBrowser(executablePath: string | undefined, more: string[] = []): Promise<RawBrowser> {
  const profile = mkdtempSync(join(tmpdir(), 'strandline-raw-'))
  const args = ['--headless', ...flags, '--remote-debugging-pipe', `--user-data-dir=${profile}`, ...more]
  const child = spawn(executablePath ?? '', args, { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] })
  const gone = new Promise<void>((done) => child.once('exit', () => done()))
  const order = ordersTo(child)
  const attach = async (targetId: string): Promise<RawPage> => {
    const { sessionId } = await order('Target.attachToTarget', { targetId, flatten: true })
    const ordered: RawPage['order'] = (method, params) => order(method, params, String(sessionId))
    return pageOf(ordered, () => order('Target.activateTarget', { targetId }))
  }
  return {
    order,
    async worker(url) {
      for (;;) {
        const { targetInfos } = (await order('Target.getTargets')) as { targetInfos: Info[] }
        const found = targetInfos.find((info) => info.type === 'service_worker' && info.url.startsWith(url))
        if (found) return attach(found.targetId)
        await new Promise((over) => setTimeout(over, 50))
      }
    },
    async open(url, before) {
      const { targetId } = await order('Target.createTarget', { url: 'about:blank' })
      const page = await attach(String(targetId))
      await page.order('Page.enable')
      if (before !== undefined) await page.order('Page.addScriptToEvaluateOnNewDocument', { source: before })
      await page.order('Page.navigate', { url })
      await page.until(`location.href === ${JSON.stringify(url)} && document.readyState === 'complete'`)
      return page
    },
    async close() {
      // Killed at once, its children would still write into the folder that is taken away.
      const closed = order('Browser.close').catch(() => {})
      const patience = new Promise<void>((over) => setTimeout(over, 5_000).unref())
      await Promise.race([closed.then(() => gone), gone, patience])
      child.kill('SIGKILL')
      await gone
      rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 })
    }
  }
}

function pageOf(order: RawPage['order'], toFront: () => Promise<unknown>): RawPage {
  const evaluate = async <T>(expression: string, gesture = false): Promise<T> => {
    const params = { expression, awaitPromise: true, returnByValue: true, userGesture: gesture }
    const { result, exceptionDetails } = (await order('Runtime.evaluate', params)) as {
      result: { value: T }
      exceptionDetails?: { exception?: { description?: string }; text: string }
    }
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
    return result.value
  }
  return {
    evaluate,
    order,
    async toFront() {
      await toFront()
    },
    async until(expression, withinMs = 30_000) {
      const endMs = Date.now() + withinMs
      // A page on its way to another address has nothing to ask.
      const holds = (): Promise<boolean> => evaluate<boolean>(`Boolean(${expression})`).catch(() => false)
      while (!(await holds())) {
        if (Date.now() > endMs) throw new Error(`It never was so: ${expression}`)
        await new Promise((over) => setTimeout(over, 100))
      }
    }
  }
}

/** Messages are JSON, each ended by a zero byte: to the browser on 3, from it on 4. */
function ordersTo(child: ChildProcess): Order {
  const [to, from] = [child.stdio[3] as Writable, child.stdio[4] as Readable]
  const waiting = new Map<number, (answer: Answer) => void>()
  let count = 0
  let rest = ''
  from.on('data', (piece: Buffer) => {
    const messages = (rest + piece.toString()).split('\0')
    rest = messages.pop() ?? ''
    for (const message of messages) {
      const answer = JSON.parse(message) as Answer
      if (answer.id === undefined) continue
      waiting.get(answer.id)?.(answer)
      waiting.delete(answer.id)
    }
  })
  to.on('error', () => {})
  return (method, params = {}, sessionId) =>
    new Promise((resolve, reject) => {
      const id = ++count
      waiting.set(id, ({ result, error }) =>
        error === undefined ? resolve(result ?? {}) : reject(new Error(`${method}: ${error.message}`))
      )
      to.write(`${JSON.stringify({ id, method, params, sessionId })}\0`)
    })
}
