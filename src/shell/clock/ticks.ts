// Ticks and wakes: a worker's beat, and every moment at which a page may have been away.
const BEAT_MS = 1_000

export type Ticks = {
  onTick(tick: () => void): () => void
  /** One more tick at that time of the device's own clock; only what was asked last counts. */
  tickAt(wallMs: number): void
  close(): void
}

/** `startWorker` gives the beating worker; it may fail or fall silent, then the page's own timer goes on. */
export function ticks(startWorker: () => Worker = tickWorker): Ticks {
  const listeners = new Set<() => void>()
  let beatMs = performance.now()
  const tick = (): void => {
    beatMs = performance.now()
    for (const listener of [...listeners]) listener()
  }
  let worker = beatingWorker(startWorker, tick)
  // Slower than the worker's beat and throttled when hidden, but it does not die with the worker.
  const timer = setInterval(() => {
    if (performance.now() - beatMs < BEAT_MS) return
    worker?.terminate()
    worker = beatingWorker(startWorker, tick)
    tick()
  }, BEAT_MS)
  const stopWakes = onWake(tick)
  return {
    onTick(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    tickAt: (wallMs) => worker?.postMessage(wallMs),
    close() {
      worker?.terminate()
      clearInterval(timer)
      stopWakes()
      listeners.clear()
    }
  }
}

function tickWorker(): Worker {
  return new Worker(new URL('./tick-worker.ts', import.meta.url), { type: 'module' })
}

function beatingWorker(start: () => Worker, tick: () => void): Worker | null {
  try {
    const worker = start()
    worker.onmessage = tick
    return worker
  } catch {
    return null
  }
}

/** A frozen or sleeping page hears of its return in one of these ways, which one depends on the browser. */
function onWake(wake: () => void): () => void {
  const onPage = ['visibilitychange', 'resume']
  const onWindow = ['pageshow', 'focus', 'online']
  for (const type of onPage) document.addEventListener(type, wake)
  for (const type of onWindow) window.addEventListener(type, wake)
  return () => {
    for (const type of onPage) document.removeEventListener(type, wake)
    for (const type of onWindow) window.removeEventListener(type, wake)
  }
}
