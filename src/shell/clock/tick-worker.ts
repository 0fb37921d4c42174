// A dedicated worker keeps time while the page is hidden and silent: a page's own timers come once a second then, and
// after five minutes once a minute.
const TICK_MS = 250
setInterval(() => postMessage(null), TICK_MS)

let extra: ReturnType<typeof setTimeout> | undefined

/** A message is the wall time, ms, of one more tick between the beats. */
addEventListener('message', ({ data }: MessageEvent<number>) => {
  clearTimeout(extra)
  const leftMs = data - Date.now()
  // Beyond the beat the beats themselves see to it, and what is asked again then is nearer the truth after a sleep.
  if (leftMs <= 4 * TICK_MS) extra = setTimeout(() => postMessage(null), Math.max(0, leftMs))
})
