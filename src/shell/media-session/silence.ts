// Browsers give the buttons of a headset only to a page that plays something of five seconds or more: so it plays silence.

const RATE_HZ = 8_000
const HEADER_BYTES = 44
/** The middle of the range of unsigned samples: no sound. */
const MIDDLE = 128

/** A WAV file, mono, 8 bit: RIFF header, format, samples. */
export function silentWav(lengthSec: number): Uint8Array<ArrayBuffer> {
  const samples = Math.ceil(lengthSec * RATE_HZ)
  const bytes = new Uint8Array(HEADER_BYTES + samples).fill(MIDDLE, HEADER_BYTES)
  const view = new DataView(bytes.buffer)
  const text = (at: number, word: string): void => {
    for (let i = 0; i < word.length; i++) view.setUint8(at + i, word.charCodeAt(i))
  }
  text(0, 'RIFF')
  view.setUint32(4, bytes.length - 8, true)
  text(8, 'WAVEfmt ')
  view.setUint32(16, 16, true)
  view.setUint16(20, 1, true)
  view.setUint16(22, 1, true)
  view.setUint32(24, RATE_HZ, true)
  view.setUint32(28, RATE_HZ, true)
  view.setUint16(32, 1, true)
  view.setUint16(34, 8, true)
  text(36, 'data')
  view.setUint32(40, samples, true)
  return bytes
}
