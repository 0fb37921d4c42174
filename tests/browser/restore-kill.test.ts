import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Host, hostOf } from '../../src/desk/bench/host.ts'
import { mediaOf, written } from '../core/backup/codec.ts'
import { note, photo, summary } from '../shell/entries.ts'
import { REAL } from './stage/journal.ts'
import { openProfile, type RealBrowser } from './stage/real-profile.ts'

const KILLS = 4
const BATCHES = 60
const ENTRIES = 100
const PHOTOS = 30

/** A backup of ended batches, long enough to be killed in the middle of. */
async function backupFile(path: string): Promise<void> {
  const shots = Array.from({ length: PHOTOS }, (_, no) => mediaOf(`photo ${no} `.repeat(20_000), [`pot/b${no}`]))
  const entries = Array.from({ length: BATCHES }, (_, batch) => {
    const potId = `b${batch}`
    const notes = Array.from({ length: ENTRIES }, (_, no) => note(potId, no + 1))
    const shot = shots[batch]
    const media = shot && { sha256: shot.sha256, mime: shot.mime, bytes: new Uint8Array(shot.bytes).buffer }
    return media ? [...notes, photo(potId, ENTRIES + 1, media)] : notes
  }).flat()
  const summaryOf = (streamId: string): unknown =>
    summary(streamId.slice('pot/'.length), { status: 'complete', endedAtMs: 2000 })
  writeFileSync(path, await written({ entries, media: shots, summaryOf }))
}

type Counts = Record<'entries' | 'summaries' | 'media' | 'incoming', number>

function counts(page: Page): Promise<Counts> {
  return page.evaluate(async (name) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open(name)
      request.onsuccess = () => resolve(request.result)
      request.onerror = () => reject(request.error)
    })
    const found: Record<string, number> = {}
    for (const store of ['entries', 'summaries', 'media', 'incoming']) {
      found[store] = await new Promise((resolve) => {
        const request = database.transaction(store).objectStore(store).count()
        request.onsuccess = () => resolve(request.result)
      })
    }
    database.close()
    return found
  }, REAL) as Promise<Counts>
}

const WHOLE = BATCHES * ENTRIES + PHOTOS

describe('a browser killed in the middle of a restore', () => {
  const folder = mkdtempSync(join(tmpdir(), 'strandline-restore-'))
  const file = join(folder, 'file.strandline-backup')
  let host: Host
  let real: RealBrowser | null = null
  beforeAll(async () => {
    host = await hostOf(process.env.STRANDLINE_DIST ?? '')
    await backupFile(file)
  })
  afterAll(async () => {
    await real?.kill()
    await host?.stop()
    rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 })
  })

  async function open(profile: string): Promise<Page> {
    real = await openProfile(profile)
    const page = real.context.pages()[0] ?? (await real.context.newPage())
    await page.goto(`${host.address}#/settings/backup`)
    return page
  }

  /** Looks at the file and holds the pad until the restore is under way. */
  async function begin(page: Page): Promise<void> {
    await page.getByLabel('Choose a backup to look at').setInputFiles(file)
    const pad = page.getByRole('button', { name: /Bring it in/ })
    await pad.waitFor()
    const nowMs = await page.evaluate(() => performance.now())
    await page.waitForFunction((sinceMs) => performance.now() - sinceMs > 800, nowMs)
    await pad.hover()
    await page.mouse.down()
    await page
      .getByText(/^Bringing it in|^In: /)
      .first()
      .waitFor()
  }

  it(`kill -9 ${KILLS} times over its whole length: the journal is as before or whole, and the next opening tidies up and says so`, async () => {
    const plain = join(folder, 'plain')
    const page = await open(plain)
    await begin(page)
    const beganMs = performance.now()
    await page.getByText(/^In: 60 batches/).waitFor()
    const tookMs = performance.now() - beganMs
    expect(await counts(page)).toEqual({ entries: WHOLE, summaries: BATCHES, media: PHOTOS, incoming: 0 })
    await real?.kill()

    const ends: string[] = []
    for (let kill = 0; kill < KILLS; kill++) {
      const profile = join(folder, `killed-${kill}`)
      const page = await open(profile)
      await begin(page)
      // From the beginning to twice what it took undisturbed: a busy machine may be slower the next time.
      await new Promise((over) => setTimeout(over, (tookMs * 2 * kill) / (KILLS - 1)))
      await real?.kill()
      const again = await open(profile)
      // The Dye book reads after the tidying: the mark it left is the last thing to go.
      await again.waitForFunction(() => document.querySelector('#keep-make') !== null)
      await waitForTidy(again)
      const found = await counts(again)
      const end = found.entries === 0 ? 'as before' : 'whole'
      ends.push(end)
      const expected = end === 'whole' ? [WHOLE, BATCHES, PHOTOS, 0] : [0, 0, 0, 0]
      expect(Object.values(found), `kill ${kill}`).toEqual(expected)
      await real?.kill()
    }
    // Kills on both sides of the one transaction, or nothing was tried.
    expect([...new Set(ends)].sort()).toEqual(['as before', 'whole'])
  }, 600_000)
})

/** Until nothing waits any more. */
async function waitForTidy(page: Page): Promise<void> {
  const until = Date.now() + 30_000
  while ((await counts(page)).incoming > 0 && Date.now() < until) await page.waitForTimeout(100)
}
