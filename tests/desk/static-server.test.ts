import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fileFor, serveLocally, staticServer } from '../../src/desk/set-up/static-server.mjs'

const above = mkdtempSync(join(tmpdir(), 'strandline-server-'))
const folder = join(above, 'dist')
const server = staticServer(folder)

type Answer = { status: number; headers: Record<string, unknown>; body: string }

/** Not fetch: it would tidy "/../" away before sending it. */
const ask = (path: string, options: { method?: string; headers?: Record<string, string> } = {}): Promise<Answer> =>
  new Promise((done, fail) => {
    const { port } = server.address() as AddressInfo
    const asked = request({ port, host: '127.0.0.1', path, ...options }, (response) => {
      let body = ''
      response.on('data', (piece) => {
        body += piece
      })
      response.on('end', () => done({ status: response.statusCode ?? 0, headers: response.headers, body }))
    })
    asked.on('error', fail)
    asked.end()
  })

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true })
  mkdirSync(join(above, 'dist-secret'))
  writeFileSync(join(above, 'secret.txt'), 'secret')
  writeFileSync(join(above, 'dist-secret', 'secret.txt'), 'secret')
  writeFileSync(join(folder, '.hidden'), 'secret')
  writeFileSync(join(folder, 'index.html'), '<p>page</p>')
  writeFileSync(join(folder, 'sw.js'), '1')
  writeFileSync(join(folder, 'assets', 'index-aSaY1CrL.js'), '2')
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
})

afterAll(async () => {
  await new Promise((done) => server.close(done))
  rmSync(above, { recursive: true })
})

describe('the server of the built app', () => {
  it('gives the page for the bare address, and says what it is', async () => {
    const { status, headers, body } = await ask('/?pot=1')
    expect([status, body]).toEqual([200, '<p>page</p>'])
    expect(headers['content-type']).toBe('text/html; charset=utf-8')
    expect(headers['x-content-type-options']).toBe('nosniff')
  })

  it('lets a browser keep only what has a hash in its name: the page and the worker are asked for anew', async () => {
    expect((await ask('/')).headers['cache-control']).toBe('no-cache')
    expect((await ask('/sw.js')).headers['cache-control']).toBe('no-cache')
    expect((await ask('/assets/index-aSaY1CrL.js')).headers['cache-control']).toContain('immutable')
  })

  it('answers "not changed" to a browser that has the file already', async () => {
    const etag = String((await ask('/sw.js')).headers.etag)
    expect((await ask('/sw.js', { headers: { 'if-none-match': etag } })).status).toBe(304)
    expect((await ask('/sw.js', { headers: { 'if-none-match': '"other"' } })).status).toBe(200)
  })

  it('answers HEAD without a body, and no other method', async () => {
    const head = await ask('/', { method: 'HEAD' })
    expect([head.status, head.headers['content-length'], head.body]).toEqual([200, '11', ''])
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS']) expect((await ask('/', { method })).status).toBe(405)
  })

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/..%5csecret.txt',
    '/../dist-secret/secret.txt',
    '/.hidden',
    '/%00',
    '/%zz',
    '//etc/passwd',
    '/no-such-file',
    'secret.txt'
  ])('gives nothing for %s', async (path) => {
    const { status, body } = await ask(path).catch(() => ({ status: 400, body: '' }))
    expect([400, 404]).toContain(status)
    expect(body).not.toContain('secret')
  })

  it('never means a file outside its folder', () => {
    expect(fileFor('/srv/dist', '/a/b.js')?.file).toBe('/srv/dist/a/b.js')
    expect(fileFor('/srv/dist', '/../dist-secret/a')).toBeNull()
  })
})

it('a taken port is told, whichever of the two local addresses it is taken on', async () => {
  // Some machines have no IPv6 at all.
  const own = Object.values(networkInterfaces()).flatMap((addresses) => (addresses ?? []).map(({ address }) => address))
  for (const host of ['127.0.0.1', '::1'].filter((address) => own.includes(address))) {
    const other = createServer()
    await new Promise<void>((done) => other.listen(0, host, done))
    const { port } = other.address() as AddressInfo
    expect(await serveLocally(folder, port)).toEqual({ ok: false, code: 'EADDRINUSE' })
    await new Promise((done) => other.close(done))
    const served = await serveLocally(folder, port)
    expect(served.ok).toBe(true)
    if (served.ok) await served.close()
  }
})
