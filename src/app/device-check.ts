// Does this device call in time while it is locked? Nobody can know from its name: it is tried. The app counts its own
// beats for a set time as it would for a watched pot, keeps the count on the disk, and says what it found, also when the
// page was ended meanwhile.
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Kept } from '../shell/settings/kept.ts'
import type { DeviceCheck } from '../ui/kitchen.ts'

const KEY = 'device-check'
/** Beats come four times a second; kept this often, so that a page that is ended loses no more. */
const KEEP_EVERY_MS = 5_000
/** A beat later than this is a moment at which a call would have come late. */
const LATE_MS = 2_000

export type Checks = {
  check: ReadonlySignal<DeviceCheck | null>
  begin(minutes: number): void
  stop(): void
  /** What an earlier page left: asked once at the start of the app. */
  load(): Promise<void>
}

/** `nowMs`: wall clock, which alone goes on while the page sleeps. `awake`: sound, bed and all as for a watched pot. */
export function deviceChecks(
  kept: Kept,
  nowMs: () => number,
  onTick: (tick: () => void) => void,
  awake: (on: boolean) => void
): Checks {
  const check = signal<DeviceCheck | null>(null)
  let lastMs: number | null = null
  let keptAtMs = 0
  const keep = (): void => {
    keptAtMs = nowMs()
    // A check that can't be kept still shows on this page.
    kept.set(KEY, check.value && { ...check.value, lastBeatMs: lastMs ?? check.value.beganAtMs }).catch(() => {})
  }
  const end = (): void => {
    awake(false)
    lastMs = null
    keep()
  }
  onTick(() => {
    const going = check.value
    if (going === null || going.endedAtMs !== null) return
    const atMs = nowMs()
    const endAtMs = going.beganAtMs + going.minutes * 60_000
    const next = beat(going, lastMs ?? going.beganAtMs, Math.min(atMs, endAtMs))
    lastMs = atMs
    check.value = atMs >= endAtMs ? { ...next, endedAtMs: endAtMs } : next
    if (check.value.endedAtMs !== null) end()
    else if (atMs - keptAtMs >= KEEP_EVERY_MS) keep()
  })
  return {
    check,
    begin(minutes) {
      const fresh = { longestMs: 0, lateMs: 0, lateTimes: 0, ended: false }
      check.value = { minutes, beganAtMs: nowMs(), endedAtMs: null, ...fresh }
      lastMs = nowMs()
      awake(true)
      keep()
    },
    stop() {
      if (check.value === null || check.value.endedAtMs !== null) return
      check.value = { ...check.value, endedAtMs: nowMs() }
      end()
    },
    async load() {
      const found = await kept.get<(DeviceCheck & { lastBeatMs: number }) | null>(KEY).catch(() => null)
      if (!found || check.value !== null) return
      const { lastBeatMs, ...earlier } = found
      if (earlier.endedAtMs !== null) check.value = earlier
      else {
        // The page that counted is gone: from its last beat on nothing could call.
        const endAtMs = Math.min(nowMs(), earlier.beganAtMs + earlier.minutes * 60_000)
        check.value = { ...beat(earlier, lastBeatMs, endAtMs), endedAtMs: endAtMs, ended: true }
      }
    }
  }
}

function beat(check: DeviceCheck, lastMs: number, atMs: number): DeviceCheck {
  const gapMs = Math.max(0, atMs - lastMs)
  const late = gapMs > LATE_MS
  return {
    ...check,
    longestMs: Math.max(check.longestMs, gapMs),
    lateMs: check.lateMs + (late ? gapMs : 0),
    lateTimes: check.lateTimes + (late ? 1 : 0)
  }
}
