// @vitest-environment happy-dom
import { cleanup, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { BackupNews } from '../../../src/ui/backup.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { BackupStrip } from '../../../src/ui/screens/dye-book/backup-strip.tsx'
import { backupOf, device, pass, potOn } from '../../app/backup/device.ts'
import { kitchenWith } from '../keep/a-backup.ts'
import { tap } from '../keep/press.ts'

const DAY = 24 * 60 * 60_000
const text = (): string => document.body.textContent ?? ''

function open(news: () => Promise<BackupNews>, more: Parameters<typeof kitchenWith>[0] = {}) {
  const kitchen = kitchenWith({ news, ...more })
  render(<BackupStrip kitchen={kitchen} />)
  return kitchen
}

beforeEach(forgetTaps)
afterEach(cleanup)

describe('the word about backups in the Dye book', () => {
  it('comes where the last backup is old and there are new batches, and leads to the backup', async () => {
    const kitchen = open(async () => ({ dueDays: 19, never: false, said: null }))
    await screen.findByText('The last backup is 19 days old, and there are new batches since.')
    tap(screen.getByText('Back up'))
    expect(kitchen.route.value).toBe('#/settings/backup')
  })

  it('says where there never was one, and is silent where nothing is due', async () => {
    open(async () => ({ dueDays: 14, never: true, said: null }))
    await screen.findByText('These records are on this device alone, since 14 days. A backup takes a minute.')
    cleanup()
    let asked = 0
    open(async () => {
      asked += 1
      return { dueDays: null, never: true, said: null }
    })
    await waitFor(() => expect(asked).toBe(1))
    expect(text()).toBe('')
  })

  it('says nothing where it can’t be told', async () => {
    let asked = 0
    open(() => {
      asked += 1
      return Promise.reject(new Error('gone'))
    })
    await waitFor(() => expect(asked).toBe(1))
    expect(text()).toBe('')
  })

  it('goes by what the device really holds: put off it is gone for a week, backed up it is gone', async () => {
    const phone = await device()
    await potOn(phone, 'moss')
    await pass(phone, 15 * DAY)
    render(<BackupStrip kitchen={kitchenWith(phone.backup)} />)
    await screen.findByText(/^These records are on this device alone, since 15 days/)
    tap(screen.getByText('Not now'))
    await waitFor(() => expect(text()).toBe(''))
    cleanup()
    await pass(phone, 7 * DAY)
    render(<BackupStrip kitchen={kitchenWith(phone.backup)} />)
    await screen.findByText(/since 22 days/)
    cleanup()
    await backupOf(phone)
    await pass(phone, 20 * DAY)
    expect(await phone.backup.news()).toEqual({ dueDays: null, never: false, said: null })
    await potOn(phone, 'plum')
    render(<BackupStrip kitchen={kitchenWith(phone.backup)} />)
    await screen.findByText('The last backup is 20 days old, and there are new batches since.')
  })
})

describe('what became of a restore that was cut short', () => {
  it('stands until it is closed, beside the reminder', async () => {
    let said: string | null = 'A restore was cut short. Nothing of it was taken over.'
    open(async () => ({ dueDays: 30, never: true, said }), {
      dismissSaid: async () => {
        said = null
      }
    })
    const strip = await screen.findByText(/^A restore was cut short/)
    expect(strip.parentElement?.className).toBe('strip strip-warn')
    tap(screen.getByText('Close'))
    await waitFor(() => expect(screen.queryByText(/^A restore was cut short/)).toBeNull())
    expect(text()).toContain('since 30 days')
  })
})
