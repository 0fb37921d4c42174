// Sound files: one channel, 16 bits.
export function readWav(file: Buffer): { rateHz: number; samples: Float32Array } {
  if (file.toString('latin1', 0, 4) !== 'RIFF') throw new Error('no WAV file')
  let rateHz = 0
  for (let at = 12; at + 8 <= file.length; ) {
    const name = file.toString('latin1', at, at + 4)
    // A file that was written into a pipe does not know its length.
    const length = Math.min(file.readUInt32LE(at + 4), file.length - at - 8)
    if (name === 'fmt ') {
      const [channels, bits] = [file.readUInt16LE(at + 10), file.readUInt16LE(at + 22)]
      if (channels !== 1 || bits !== 16) throw new Error(`a WAV file of ${channels} channels and ${bits} bits`)
      rateHz = file.readUInt32LE(at + 12)
    }
    if (name === 'data') {
      const samples = new Float32Array(Math.floor(length / 2))
      for (let nth = 0; nth < samples.length; nth++) samples[nth] = file.readInt16LE(at + 8 + 2 * nth) / 32_768
      return { rateHz, samples }
    }
    at += 8 + length + (length % 2)
  }
  throw new Error('a WAV file without sound')
}

/** Samples from -1 to 1; what is over is cut. */
export function wavOf(samples: Float32Array, rateHz: number): Buffer {
  const file = Buffer.alloc(44 + 2 * samples.length)
  file.write('RIFF', 0, 'latin1')
  file.writeUInt32LE(36 + 2 * samples.length, 4)
  file.write('WAVEfmt ', 8, 'latin1')
  file.writeUInt32LE(16, 16)
  file.writeUInt16LE(1, 20)
  file.writeUInt16LE(1, 22)
  file.writeUInt32LE(rateHz, 24)
  file.writeUInt32LE(2 * rateHz, 28)
  file.writeUInt16LE(2, 32)
  file.writeUInt16LE(16, 34)
  file.write('data', 36, 'latin1')
  file.writeUInt32LE(2 * samples.length, 40)
  samples.forEach((sample, nth) => {
    file.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample)) * 32_767), 44 + 2 * nth)
  })
  return file
}
