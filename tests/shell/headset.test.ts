import { describe, expect, it } from 'vitest'
import { type Buttons, headset, type Sounding, type Told } from '../../src/shell/media-session/headset.ts'
import { silentWav } from '../../src/shell/media-session/silence.ts'

type Handled = Parameters<Buttons['setActionHandler']>[0]

/** A browser's media session and its one sound, which may be refused or paused from outside. */
function browser({ plays = true }: { plays?: boolean } = {}): {
  buttons: Buttons
  shown: () => Told | null
  handlers: Map<Handled, (() => void) | null>
  audio: { playing: boolean; made: number; allow: boolean; pauseFromOutside(): void }
  makeAudio: () => Sounding
} {
  const handlers = new Map<Handled, (() => void) | null>()
  let shown: Told | null = null
  const events = new Map<string, () => void>()
  const audio = {
    playing: false,
    made: 0,
    allow: plays,
    pauseFromOutside() {
      audio.playing = false
      events.get('pause')?.()
    }
  }
  return {
    handlers,
    audio,
    shown: () => shown,
    buttons: {
      playbackState: 'none',
      setActionHandler: (action, handler) => handlers.set(action, handler),
      show: (told) => {
        shown = told
      }
    },
    makeAudio: () => {
      audio.made += 1
      return {
        async play() {
          if (!audio.allow) throw new DOMException('no gesture', 'NotAllowedError')
          audio.playing = true
          events.get('playing')?.()
        },
        pause() {
          if (audio.playing) audio.pauseFromOutside()
        },
        addEventListener: (type: string, heard: unknown) => events.set(type, heard as () => void)
      } as Sounding
    }
  }
}

const soon = (): Promise<void> => new Promise((done) => setTimeout(done, 0))

async function wanted(given = browser()): Promise<typeof given & { set: ReturnType<typeof headset>; heard: string[] }> {
  const set = headset(given.buttons, given.makeAudio)
  const heard: string[] = []
  set.onPress((press) => heard.push(press))
  set.want(true)
  await soon()
  return { ...given, set, heard }
}

describe('a headset', () => {
  it('is left to music until it is wanted', () => {
    const { buttons, handlers, audio, makeAudio } = browser()
    headset(buttons, makeAudio).tell({ title: 'Moss: Acid 2 in', artist: '' })
    expect([audio.made, handlers.size]).toEqual([0, 0])
  })

  it('answers with "next" and says again with "previous" while silence plays', async () => {
    const { set, handlers, heard, audio, buttons } = await wanted()
    expect([set.state(), audio.playing, buttons.playbackState]).toEqual(['ready', true, 'playing'])
    handlers.get('nexttrack')?.()
    handlers.get('previoustrack')?.()
    expect(heard).toEqual(['done', 'again'])
  })

  it('shows what a press would answer, and nothing once it is given back', async () => {
    const { set, shown, handlers, audio } = await wanted()
    set.tell({ title: 'Moss: Acid 2 in, 30 mL', artist: 'Next: done' })
    expect(shown()?.title).toBe('Moss: Acid 2 in, 30 mL')
    set.want(false)
    expect([set.state(), audio.playing, shown()]).toEqual(['off', false, null])
    expect([...handlers.values()].filter((handler) => handler !== null)).toEqual([])
  })

  it.each(['by its own button', 'by the phone'])(
    'paused %s says so and answers nothing, until it plays on',
    async (how) => {
      const { set, shown, handlers, heard, audio } = await wanted()
      set.tell({ title: 'Moss: Acid 2 in', artist: '' })
      const next = handlers.get('nexttrack')
      if (how === 'by the phone') audio.pauseFromOutside()
      else handlers.get('pause')?.()
      expect([set.state(), shown()?.title]).toEqual(['paused', 'Paused: these buttons don’t answer'])
      expect([handlers.get('nexttrack'), handlers.get('previoustrack')]).toEqual([null, null])
      // A press that was on its way.
      next?.()
      expect(heard).toEqual([])
      set.tell({ title: 'Plum: Lower band 5', artist: '' })
      expect(shown()?.title).toMatch(/^Paused/)
      handlers.get('play')?.()
      await soon()
      expect([set.state(), shown()?.title]).toEqual(['ready', 'Plum: Lower band 5'])
      handlers.get('nexttrack')?.()
      expect(heard).toEqual(['done'])
    }
  )

  it('waits for a touch where the browser lets nothing play yet, and says so meanwhile', async () => {
    const given = await wanted(browser({ plays: false }))
    const states: string[] = []
    given.set.onState(() => states.push(given.set.state()))
    expect(given.set.state()).toBe('blocked')
    given.audio.allow = true
    given.set.resume()
    await soon()
    expect(states).toEqual(['ready'])
  })

  it('stays given back where the browser lets it play only after it is no longer wanted', async () => {
    const { buttons, makeAudio, audio } = browser()
    const set = headset(buttons, makeAudio)
    set.want(true)
    set.want(false)
    await soon()
    expect([set.state(), audio.playing]).toEqual(['off', false])
  })

  it('says where a browser has no such buttons', () => {
    const set = headset(null, browser().makeAudio)
    set.want(true)
    expect(set.state()).toBe('none')
  })
})

describe('silence', () => {
  // Multimedia Programming Interface and Data Specifications 1.0 (IBM, Microsoft, 1991), "WAVE": offsets of the header
  // and unsigned samples at 8 bit; from memory.
  it('is a WAV of its full length whose samples are all the middle of the range', () => {
    const bytes = silentWav(6)
    const view = new DataView(bytes.buffer)
    const word = (at: number): string => String.fromCharCode(...bytes.slice(at, at + 4))
    expect([word(0), word(8), word(12), word(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data'])
    expect(view.getUint32(4, true)).toBe(bytes.length - 8)
    expect(view.getUint32(40, true) / view.getUint32(28, true)).toBe(6)
    expect(new Set(bytes.slice(44))).toEqual(new Set([128]))
  })
})
