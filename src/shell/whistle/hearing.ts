// The browser's sound graph from a microphone to the recogniser.

import type { FromWorklet, ToWorklet, WorkletSetUp } from './whistle-worklet.ts'
import workletUrl from './whistle-worklet.ts?worker&url'

export type Hearing = {
  /** Begins to hear this stream. Throws if the browser can't. */
  listenTo(stream: MediaStream): Promise<void>
  deafFor(ms: number): void
  close(): void
}

export type HearingEvents = {
  onMessage(message: FromWorklet): void
  /** The browser stopped its sound (an incoming call, a locked screen), or let it go on. */
  onRunning(running: boolean): void
  onFailure(): void
}

export type OpenHearing = (setUp: WorkletSetUp, events: HearingEvents) => Hearing

/** Call inside a tap: some browsers let sound begin only there. */
export function openHearing(setUp: WorkletSetUp, events: HearingEvents): Hearing {
  // At the device's own rate: not every browser lets a microphone into a context of another.
  const context = new AudioContext()
  let node: AudioWorkletNode | null = null
  let closed = false
  void context.resume().catch(() => {})
  return {
    async listenTo(stream) {
      await context.audioWorklet.addModule(workletUrl)
      if (closed) return
      const made = new AudioWorkletNode(context, 'whistle', { channelCount: 1, processorOptions: setUp })
      made.port.onmessage = ({ data }: MessageEvent<FromWorklet>) => events.onMessage(data)
      made.onprocessorerror = () => events.onFailure()
      // Its own output is silence; a node that leads nowhere may never be asked for anything.
      context.createMediaStreamSource(stream).connect(made).connect(context.destination)
      node = made
      await context.resume()
      context.onstatechange = () => {
        if (!closed) events.onRunning(context.state === 'running')
      }
    },
    deafFor(ms) {
      node?.port.postMessage({ deafMs: ms } satisfies ToWorklet)
    },
    close() {
      closed = true
      context.onstatechange = null
      node?.disconnect()
      void context.close().catch(() => {})
    }
  }
}
