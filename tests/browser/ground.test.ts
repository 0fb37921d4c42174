import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { staticServer } from '../../src/desk/set-up/static-server.mjs'
import { root } from '../tidy/tree.ts'

const dist = process.env.STRANDLINE_DIST ?? ''

let browser: Browser
beforeAll(async () => {
  const args = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run']
  browser = await chromium.launch({ executablePath: process.env.CHROME_PATH, args })
})
afterAll(() => browser?.close())

const listen = async (server: Server): Promise<number> => {
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  return (server.address() as AddressInfo).port
}

const stop = async (server: Server): Promise<void> => {
  server.closeAllConnections()
  await new Promise((done) => server.close(done))
}

describe('dist, put under a path of somebody else’s host', () => {
  const host = mkdtempSync(join(tmpdir(), 'strandline-host-'))
  let server: Server
  let address = ''
  let context: BrowserContext
  let page: Page
  let complaints: string[]
  let asked: string[]

  beforeAll(() => cpSync(dist, join(host, 'yarn', 'strandline'), { recursive: true }))
  afterAll(() => rmSync(host, { recursive: true }))

  beforeEach(async () => {
    server = staticServer(host)
    address = `http://127.0.0.1:${await listen(server)}/yarn/strandline/`
    context = await browser.newContext()
    complaints = []
    asked = []
    context.on('request', (request) => asked.push(request.url()))
    page = await context.newPage()
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
    page.on('pageerror', (error) => complaints.push(error.message))
    await page.goto(address)
  })
  afterEach(async () => {
    await context.close()
    await stop(server)
  })

  /** Until the worker of the first visit serves this page. */
  const keptForOffline = (): Promise<unknown> =>
    page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 30_000 })

  it('shows the app, and the browser has nothing to complain of', async () => {
    await page.locator('#app > *').first().waitFor()
    expect(complaints).toEqual([])
  })

  it('is there after the first visit with the server stopped, at any address inside the app', async () => {
    await keptForOffline()
    await stop(server)
    for (const inside of ['', '#/shelf', 'index.html', '?from=home-screen']) {
      await page.goto(`${address}${inside}`)
      await page.reload()
      await page.locator('#app > *').first().waitFor()
    }
    await page.evaluate(() => fetch('./manifest.webmanifest').then((answer) => answer.json()))
  })

  it('asks nothing of any other origin', async () => {
    await keptForOffline()
    expect(asked.length).toBeGreaterThan(1)
    expect(asked.filter((url) => !url.startsWith(address) && !url.startsWith('blob:'))).toEqual([])
  })

  it('can not be made to ask anything of another origin, or to run a script that was written into it', async () => {
    const other = createServer((_, response) => response.end('reached'))
    const elsewhere = `http://127.0.0.1:${await listen(other)}/`
    const outcome = await page.evaluate(async (url) => {
      const reached = await fetch(url, { mode: 'no-cors' }).then(
        () => 'reached',
        () => 'refused'
      )
      const script = document.createElement('script')
      script.textContent = 'window.ran = true'
      document.body.append(script)
      return { reached, ran: 'ran' in window }
    }, elsewhere)
    await stop(other)
    expect(outcome).toEqual({ reached: 'refused', ran: false })
  })

  it('can be installed: the browser finds the manifest and every icon of it', async () => {
    const session = await context.newCDPSession(page)
    const { errors, data } = await session.send('Page.getAppManifest')
    expect(errors).toEqual([])
    const { name, icons, display } = JSON.parse(data ?? '{}')
    expect([name, display]).toEqual(['Strandline', 'standalone'])
    for (const { src, sizes } of icons) {
      const widthPx = await page.evaluate(async (file) => {
        const image = new Image()
        image.src = file
        await image.decode()
        return image.naturalWidth
      }, src)
      if (sizes !== 'any') expect(`${widthPx}x${widthPx}`).toBe(sizes)
    }
  })
})

describe('npm start', () => {
  const started: ChildProcess[] = []
  afterEach(() => {
    for (const child of started.splice(0)) child.kill()
  })

  type Told = { out: string; code: number | null }

  /** Until it names its address, or ends. */
  const start = (port: string): Promise<Told> =>
    new Promise((done) => {
      const child = spawn(process.execPath, ['src/desk/start.mjs'], { cwd: root, env: { ...process.env, PORT: port } })
      started.push(child)
      let out = ''
      const hear = (piece: Buffer): void => {
        out += piece
        if (out.includes('http://localhost:') && out.includes('Strandline is at')) done({ out, code: null })
      }
      child.stdout.on('data', hear)
      child.stderr.on('data', hear)
      child.on('close', (code) => done({ out, code }))
    })

  const freePort = async (): Promise<string> => {
    const server = createServer()
    const port = await listen(server)
    await stop(server)
    return String(port)
  }

  it('serves the app on the port asked for, and does no work again that is done', async () => {
    const port = await freePort()
    await start(await freePort())
    const { out } = await start(port)
    expect(out).toBe(`Strandline is at http://localhost:${port} (stop it with Ctrl+C)\n`)
    expect(await (await fetch(`http://localhost:${port}/`)).text()).toContain('<title>Strandline</title>')
  })

  it('says which port is taken and the way out, and ends with 1', async () => {
    const other = createServer()
    const port = String(await listen(other))
    const { out, code } = await start(port)
    await stop(other)
    expect(code).toBe(1)
    expect(out).toMatch(new RegExp(`Port ${port} is taken.*PORT=4173 npm start`))
  })

  it('says what a port is when PORT is none, and ends with 1', async () => {
    const { out, code } = await start('soup')
    expect(code).toBe(1)
    expect(out).toContain('PORT is "soup"')
  })
})
