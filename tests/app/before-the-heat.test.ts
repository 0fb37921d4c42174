// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest'
import { beforeTheHeat } from '../../src/app/before-the-heat.ts'
import { screenLock } from '../../src/shell/screen-lock/screen-lock.ts'
import { memoryPlayer } from '../../src/shell/sound/memory-player.ts'

const wake = {
  request: async () => ({ released: false, onrelease: null, release: async () => {} })
}

/** What the device says of itself. */
function device(battery: { charging: boolean; level: number } | null, persists: boolean): void {
  vi.stubGlobal('navigator', {
    storage: { persisted: async () => false, persist: async () => persists },
    ...(battery === null ? {} : { getBattery: async () => battery })
  })
}

afterEach(() => vi.unstubAllGlobals())

const words = async (...given: Parameters<typeof beforeTheHeat>): Promise<Record<string, [boolean, string]>> =>
  Object.fromEntries((await beforeTheHeat(...given)).map(({ what, ok, say }) => [what, [ok, say]]))

describe('before the heat', () => {
  it('every check is told in words, and the sound is heard when it works', async () => {
    device({ charging: false, level: 0.31 }, true)
    vi.stubGlobal('Notification', { permission: 'granted' })
    const player = memoryPlayer()
    expect(await words(player, screenLock(wake, document), 0.7)).toEqual({
      sound: [true, 'Sound ready. Try it with the fan on'],
      screen: [true, 'The screen stays on'],
      storage: [true, 'Records are kept on this device'],
      notices: [true, 'Notices come while the app is hidden'],
      battery: [false, 'Battery 31 %: put the charger in']
    })
    expect(player.played).toEqual([{ pattern: 'now', level: 0.7 }])
  })

  it('what does not work is said, with what to do, and nothing is taken for granted', async () => {
    device(null, false)
    vi.stubGlobal('Notification', undefined)
    expect(await words(memoryPlayer('broken'), screenLock(undefined, document), 0.7)).toEqual({
      sound: [false, 'No sound: keep the screen in sight'],
      screen: [false, 'The screen may sleep: set it to stay on'],
      notices: [false, 'This browser shows no notices'],
      storage: [false, 'The browser may clear records when space runs short. Export those you need.'],
      battery: [false, 'This browser does not tell the battery: put the charger in']
    })
  })

  it('sound that the dyer turned off stays off', async () => {
    device({ charging: true, level: 1 }, true)
    const player = memoryPlayer()
    expect((await words(player, screenLock(wake, document), null)).sound).toEqual([
      false,
      'Sound is off: calls show on the screen only'
    ])
    expect([player.state(), player.played]).toEqual(['locked', []])
  })
})
