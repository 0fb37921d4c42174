// A browser of its own on a profile that stays, started beside this process so that it can be killed like a battery
// that ran out: the whole group at once, without a goodbye.
import { type ChildProcess, spawn } from 'node:child_process'
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, type BrowserContext, chromium } from 'playwright-core'
import { flags } from '../../../src/desk/bench/chromium.ts'

export type RealBrowser = { browser: Browser; context: BrowserContext; kill(): Promise<void> }

/** A browser that came up after a kill may never answer its driver; it is no part of what is tested. */
const STARTS = 3
const ANSWERS_WITHIN_MS = 12_000

/** Starts Chromium on the profile and takes hold of its one context. */
export async function openProfile(profile: string, more: string[] = []): Promise<RealBrowser> {
  for (let start = 1; ; start++) {
    const child = startOn(profile, more)
    try {
      return await takeHold(child)
    } catch (error) {
      killGroup(child)
      await goneOf(child)
      if (start === STARTS) throw error
    }
  }
}

function startOn(profile: string, more: string[]): ChildProcess {
  // What a killed browser leaves to keep a second one out.
  for (const name of ['SingletonLock', 'SingletonCookie', 'SingletonSocket'])
    rmSync(join(profile, name), { force: true })
  const args = ['--headless', ...flags, '--remote-debugging-port=0', `--user-data-dir=${profile}`, ...more]
  return spawn(process.env.CHROME_PATH ?? '', args, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] })
}

async function takeHold(child: ChildProcess): Promise<RealBrowser> {
  const browser = await chromium.connectOverCDP(await addressOf(child), { timeout: ANSWERS_WITHIN_MS })
  const context = browser.contexts()[0]
  if (context === undefined) throw new Error('the browser came up without a context')
  return {
    browser,
    context,
    async kill() {
      killGroup(child)
      await goneOf(child)
    }
  }
}

async function goneOf(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  await new Promise((gone) => child.once('exit', gone))
}

function killGroup(child: ChildProcess): void {
  if (child.pid === undefined || child.exitCode !== null) return
  try {
    process.kill(-child.pid, 'SIGKILL')
  } catch {
    // It was gone already.
  }
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let told = ''
    child.stderr?.on('data', (piece: Buffer) => {
      told += piece
      const address = /DevTools listening on (\S+)/.exec(told)?.[1]
      if (address !== undefined) found(address)
    })
    child.once('error', failed)
    child.once('exit', () => failed(new Error(`the browser ended before it was there:\n${told}`)))
  })
}
