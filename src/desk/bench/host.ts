// A host of its own for a folder of built files, on a port that is free.
import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { staticServer } from '../set-up/static-server.mjs'

export type Host = { address: string; stop(): Promise<void>; startAgain(): Promise<void> }

export async function hostOf(folder: string): Promise<Host> {
  let server = staticServer(folder)
  const port = await listen(server, 0)
  return {
    address: `http://127.0.0.1:${port}/`,
    stop: () => stop(server),
    async startAgain() {
      server = staticServer(folder)
      await listen(server, port)
    }
  }
}

async function listen(server: Server, port: number): Promise<number> {
  await new Promise<void>((done, failed) => {
    server.once('error', failed)
    server.listen(port, '127.0.0.1', done)
  })
  return (server.address() as AddressInfo).port
}

async function stop(server: Server): Promise<void> {
  if (!server.listening) return
  server.closeAllConnections()
  await new Promise((done) => server.close(done))
}
