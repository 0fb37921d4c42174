// @vitest-environment happy-dom
import { afterEach, expect, it, vi } from 'vitest'
import { browserNotices } from '../../src/shell/notices/notices.ts'

afterEach(() => vi.unstubAllGlobals())

it('leave to show notices is asked of the browser when it may have changed, not with each look', async () => {
  let reads = 0
  let given: NotificationPermission = 'default'
  vi.stubGlobal('Notification', {
    get permission() {
      reads++
      return given
    },
    requestPermission: async () => given
  })
  vi.stubGlobal('navigator', { serviceWorker: {} })
  const notices = browserNotices('store', 'this')
  for (let tick = 0; tick < 100; tick++) expect(notices.state()).toBe('unasked')
  expect(reads).toBe(1)
  given = 'granted'
  await notices.ask()
  expect(notices.state()).toBe('ready')
  // Taken back in the browser's settings, and the page looked at again.
  given = 'denied'
  document.dispatchEvent(new Event('visibilitychange'))
  expect(notices.state()).toBe('refused')
  expect(reads).toBe(3)
})
