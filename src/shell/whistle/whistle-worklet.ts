// Runs the recogniser where the browser makes its sound: on a thread of its own, so that a busy page misses no whistle.
import { createRecogniser, type Heard } from './recogniser.ts'

/** From the page. */
export type ToWorklet = { deafMs: number }
/** To the page. 'now' comes a few times a second: while it comes, sound comes. */
export type FromWorklet =
  | { type: 'heard'; heard: Heard; agoMs: number }
  | { type: 'now'; tooLoud: boolean; levelDb: number; nowMs: number }

export type WorkletSetUp = { whistleDb?: number }

/** What the standard gives such a script; the compiler's own list of types has it for pages only. */
declare const sampleRate: number
declare class AudioWorkletProcessor {
  readonly port: MessagePort
}
declare function registerProcessor(name: string, processor: unknown): void

const EVERY_MS = 250

class WhistleProcessor extends AudioWorkletProcessor {
  readonly recogniser
  toldMs = Number.NEGATIVE_INFINITY

  constructor({ processorOptions }: { processorOptions: WorkletSetUp }) {
    super()
    this.recogniser = createRecogniser({ sampleRateHz: sampleRate, ...processorOptions })
    this.port.onmessage = ({ data }: MessageEvent<ToWorklet>) => this.recogniser.deafFor(data.deafMs)
  }

  process([input]: Float32Array[][]): boolean {
    const samples = input?.[0]
    // No channel: the microphone gives nothing, and the page hears of it by the silence here.
    if (samples === undefined) return true
    const heard = this.recogniser.push(samples)
    const nowMs = this.recogniser.nowMs()
    for (const each of heard) this.tell({ type: 'heard', heard: each, agoMs: nowMs - each.atMs })
    if (nowMs - this.toldMs >= EVERY_MS) {
      this.toldMs = nowMs
      this.tell({ type: 'now', tooLoud: this.recogniser.tooLoud(), levelDb: this.recogniser.levelDb(), nowMs })
    }
    return true
  }

  tell(message: FromWorklet): void {
    this.port.postMessage(message)
  }
}

registerProcessor('whistle', WhistleProcessor)
