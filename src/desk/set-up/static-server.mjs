// A small file server for dist. GET and HEAD only, nothing outside its folder.
import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, sep } from 'node:path'

/** @type {Record<string, string>} */
const contentTypes = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.yaml': 'text/plain; charset=utf-8',
  '.ics': 'text/calendar; charset=utf-8'
}

/** Only files with a hash in their name may be kept unasked; the rest is checked each time, or an update is never seen.
 * @param {string} path */
const cachingOf = (path) =>
  /^\/assets\/.*-[\w-]{8,}\.\w+$/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache'

/**
 * The file that a request means, or null if it can't mean one: a bad escape, a NUL, a way out of the folder, a dot file.
 * @param {string} folder @param {string} url @returns {{path: string, file: string} | null}
 */
export const fileFor = (folder, url) => {
  let path
  try {
    path = decodeURIComponent((url.split(/[?#]/, 1)[0] ?? '').replace(/^https?:\/\/[^/]*/, ''))
  } catch {
    return null
  }
  if (!path.startsWith('/') || /[\0\\]/.test(path)) return null
  if (path.split('/').some((part) => part.startsWith('.'))) return null
  if (path.endsWith('/')) path += 'index.html'
  const file = join(folder, path)
  return file.startsWith(folder + sep) ? { path, file } : null
}

/** @param {import('node:http').ServerResponse} response @param {number} status @param {string} say */
const refuse = (response, status, say, headers = {}) => {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store', ...headers })
  response.end(response.req.method === 'HEAD' ? undefined : `${say}\n`)
}

/** @param {string} folder @param {import('node:http').IncomingMessage} request @param {import('node:http').ServerResponse} response */
const answer = async (folder, request, response) => {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return refuse(response, 405, 'Only GET and HEAD are answered here.', { allow: 'GET, HEAD' })
  }
  const meant = fileFor(folder, request.url ?? '/')
  const found = meant && (await stat(meant.file).catch(() => null))
  if (!meant || !found) return refuse(response, 404, 'Nothing is here.')
  if (found.isDirectory()) {
    // Relative addresses in the page need the slash at the end; relative itself, so that no other host can be named.
    const last = meant.path.split('/').at(-1) ?? ''
    return refuse(response, 301, 'Moved.', { location: `./${encodeURIComponent(last)}/` })
  }
  const etag = `"${found.size.toString(36)}-${Math.trunc(found.mtimeMs).toString(36)}"`
  const headers = {
    'content-type': contentTypes[extname(meant.file)] ?? 'application/octet-stream',
    'cache-control': cachingOf(meant.path),
    'x-content-type-options': 'nosniff',
    etag
  }
  if (request.headers['if-none-match'] === etag) return response.writeHead(304, headers).end()
  response.writeHead(200, { ...headers, 'content-length': found.size })
  if (request.method === 'HEAD') return response.end()
  createReadStream(meant.file)
    .on('error', () => response.destroy())
    .pipe(response)
}

/** @param {string} folder an absolute path without a slash at the end @returns {import('node:http').Server} */
export const staticServer = (folder) =>
  createServer((request, response) => {
    answer(folder, request, response).catch(() => response.destroy())
  })

/**
 * Listens on this machine only, on both of its own addresses: which of them "localhost" means differs.
 * @param {string} folder @param {number} port
 * @returns {Promise<{ok: true, close: () => Promise<void>} | {ok: false, code: string}>}
 */
export const serveLocally = async (folder, port) => {
  /** @type {import('node:http').Server[]} */
  const servers = []
  const close = async () => {
    await Promise.all(
      servers.map((server) => {
        server.closeAllConnections()
        return new Promise((done) => server.close(done))
      })
    )
  }
  for (const host of ['127.0.0.1', '::1']) {
    const server = staticServer(folder)
    const code = await new Promise((done) => {
      server.once('error', (error) => done(/** @type {NodeJS.ErrnoException} */ (error).code ?? error.message))
      server.listen({ port, host, ipv6Only: host === '::1' }, () => done(''))
    })
    if (code === '') servers.push(server)
    else if (!(host === '::1' && ['EADDRNOTAVAIL', 'EAFNOSUPPORT'].includes(code))) {
      await close()
      return { ok: false, code }
    }
  }
  return { ok: true, close }
}
