// A page with nothing but the ear, for the test to take hold of.
import { type Ear, whistleEar } from '../../../src/shell/whistle/whistle-ear.ts'

export type EarPage = {
  ear: Ear
  heard: string[]
  states: string[]
  /** The microphone's own settings, and its tracks, as the browser gave them. */
  tracks: MediaStreamTrack[]
}

const tracks: MediaStreamTrack[] = []
const devices = navigator.mediaDevices
const ask = devices.getUserMedia.bind(devices)
devices.getUserMedia = async (wanted) => {
  const stream = await ask(wanted)
  tracks.push(...stream.getTracks())
  return stream
}

const ear = whistleEar()
const page: EarPage = { ear, heard: [], states: [], tracks }
ear.onHeard(({ kind }) => page.heard.push(kind))
ear.onState(() => page.states.push(ear.state()))
Object.assign(globalThis, { earPage: page })
