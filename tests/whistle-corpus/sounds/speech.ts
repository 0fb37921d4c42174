// Talk from the speech synthesisers of Debian, where they are installed: espeak-ng (formants) and flite (joined pieces).
import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createResampler } from '../../../src/shell/whistle/resample.ts'
import type { Chance } from '../chance.ts'
import { readWav } from '../wav.ts'

export type Part = 'tune' | 'held-out'
export type Speaker = {
  program: string
  voices: Record<Part, string[]>
  say(text: string, voice: string, chance: Chance): Float32Array
}

const words =
  'lift lower the skein into bath now stir slowly acid is in heat off wait for ten minutes oh who are you too blue new moon we ' +
  'could you bring me that spoon please yes no really what did she say why it smells of wool and vinegar in here look how clear ' +
  'water has become hello hey ooh wow see you soon tea is ready where did he put those gloves I thought they were on a shelf'
const list = words.split(' ')

/** No sentences, but the melody of talk: the synthesisers make it from the stops. */
function text(chance: Chance, sentences: number): string {
  const sentence = (): string => {
    const said = Array.from({ length: 2 + Math.floor(chance.unit() * 10) }, () => chance.pick(list))
    return said.join(chance.yes(0.1) ? ', ' : ' ') + chance.pick(['.', '.', '?', '!', '...'])
  }
  return Array.from({ length: sentences }, sentence).join(' ')
}

const MOST_BYTES = 64 * 1024 * 1024

const espeak: Speaker = {
  program: 'espeak-ng',
  // The two parts share no voice.
  voices: {
    tune: ['en-gb+m1', 'en-gb+f2', 'en-us+m3', 'en-us+f1', 'de+m2', 'fr+f3', 'en-gb+croak'],
    'held-out': [
      'en-us+m4',
      'en-gb+f4',
      'en-gb-scotland+m5',
      'en-us+f5',
      'es+f4',
      'it+m6',
      'pl+f2',
      'en-gb+whisper',
      'sv+m7'
    ]
  },
  say(said, voice, chance) {
    const pitch = String(Math.round(chance.between(20, 99)))
    const speed = String(Math.round(chance.between(110, 220)))
    const args = ['-v', voice, '-p', pitch, '-s', speed, '--stdout', said]
    return at16k(run('espeak-ng', args))
  }
}

const flite: Speaker = {
  program: 'flite',
  voices: { tune: ['kal16', 'rms'], 'held-out': ['slt', 'awb'] },
  say(said, voice, chance) {
    const file = join(tmpdir(), `whistle-corpus-${process.pid}.wav`)
    const stretch = `duration_stretch=${chance.between(0.8, 1.4)}`
    run('flite', ['-voice', voice, '--setf', stretch, '-t', said, '-o', file])
    const wav = readFileSync(file)
    rmSync(file)
    return at16k(wav)
  }
}

/** What it writes. A busy machine now and then can't start a program: then once more. */
function run(program: string, args: string[], tries = 3): Buffer {
  const done = spawnSync(program, args, { maxBuffer: MOST_BYTES })
  if (done.error !== undefined && tries > 1) return run(program, args, tries - 1)
  if (done.status !== 0) throw new Error(`${program} ${args.join(' ')}: ${done.error?.message ?? done.stderr}`)
  return done.stdout
}

function at16k(wav: Buffer): Float32Array {
  const { rateHz, samples } = readWav(wav)
  return createResampler(rateHz)(samples)
}

export function speakers(): { there: Speaker[]; missing: string[] } {
  const all = [espeak, flite]
  const there = all.filter(({ program }) => spawnSync(program, ['--version']).error === undefined)
  return { there, missing: all.filter((each) => !there.includes(each)).map(({ program }) => program) }
}

/** `seconds` of talk; one voice after another. */
export function speech(by: Speaker, part: Part, chance: Chance, seconds: number): Float32Array {
  const out = new Float32Array(Math.round(seconds * 16_000))
  for (let at = 0; at < out.length; ) {
    const said = by.say(text(chance, 12), chance.pick(by.voices[part]), chance)
    out.set(said.subarray(0, out.length - at), at)
    at += said.length
  }
  return out
}
