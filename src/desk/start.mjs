// npm start: installs what is missing, builds if the sources changed, serves the built app.
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { installMissing } from './set-up/packages.mjs'
import { readPort, sayPortProblem } from './set-up/port.mjs'
import { serveLocally } from './set-up/static-server.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')

const start = async () => {
  const port = readPort(process.env.PORT)
  if (!port.ok) return port.say
  // The port first: nobody should wait for a build to learn that it is taken.
  const early = await serveLocally(join(root, 'dist'), port.port)
  if (!early.ok) return sayPortProblem(port.port, early.code)
  await early.close()
  if (!installMissing(root)) return 'Strandline was not started.'
  // Imported late: it needs what was just installed.
  const { makeDistIfStale } = await import('./set-up/make-dist.mjs')
  await makeDistIfStale(root)
  const served = await serveLocally(join(root, 'dist'), port.port)
  if (!served.ok) return sayPortProblem(port.port, served.code)
  console.log(`Strandline is at http://localhost:${port.port} (stop it with Ctrl+C)`)
  return null
}

const problem = await start()
if (problem !== null) {
  console.error(problem)
  process.exit(1)
}
