// @vitest-environment happy-dom
import { cleanup, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { KitchenBackup, LastBackup, RestorePlan } from '../../../src/ui/backup.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { KeepScreen } from '../../../src/ui/screens/keep/index.tsx'
import type { TestKitchen } from '../dye-book/a-kitchen.ts'
import { facts, kitchenWith, noPlan, T } from './a-backup.ts'
import { choose, hold, tap } from './press.ts'

const last: LastBackup = { atMs: T, name: 'a.strandline-backup', bytes: 1_234_567, batches: 3, where: 'downloads' }
const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const page = (): string => plain(document.body.textContent)
const file = new File(['x'], 'x.strandline-backup')

function open(answers: Partial<KitchenBackup> = {}): TestKitchen {
  const kitchen = kitchenWith(answers)
  render(<KeepScreen kitchen={kitchen} />)
  return kitchen
}

beforeEach(forgetTaps)
afterEach(cleanup)

describe('the backup screen', () => {
  it('says what a backup holds, that none was made, and what room there is', async () => {
    open()
    await screen.findByText('No backup was made on this device yet.')
    expect(page()).toContain('3 batches, 2 photos (1.2 MB), 1 voice note (90 kB), drafts, protocols and settings')
    expect(page()).toContain('It is not encrypted')
    expect(page()).toMatch(/In use 5 MB, left \d+ MB\./)
    expect(screen.queryByText(/Room runs short/)).toBeNull()
  })

  it('says so where the records can’t be read, and tries again', async () => {
    let reads = 0
    open({ facts: async () => (++reads === 1 ? Promise.reject(new Error('gone')) : facts) })
    await screen.findByText('The records can’t be read now.')
    tap(screen.getByText('Try again'))
    await screen.findByText('Back up now')
  })

  it('warns where room runs short, and says where a browser tells nothing of it', async () => {
    open({ facts: async () => ({ ...facts, usedBytes: 8.1e8 }) })
    await screen.findByText(/^Room runs short/)
    cleanup()
    open({ facts: async () => ({ ...facts, usedBytes: null }) })
    await screen.findByText('This browser does not say how much room there is.')
  })
})

describe('making a backup', () => {
  it('shows how far it is, and then what was made and where it went', async () => {
    let go: () => void = () => {}
    const gate = new Promise<void>((resolve) => (go = resolve))
    const made: LastBackup[] = []
    open({
      facts: async () => ({ ...facts, last: made[0] ?? null }),
      make: async (progress) => {
        progress(0.427)
        await gate
        made.push(last)
        return { ok: true, last }
      }
    })
    tap(await screen.findByText('Back up now'))
    await screen.findByText('42 %')
    expect(screen.queryByText('Back up now')).toBeNull()
    go()
    const said = await screen.findByText(/^Backed up: /)
    expect(plain(said.textContent)).toBe(
      'Backed up: 3 batches, 1.2 MB, read back and whole. “a.strandline-backup” was handed to the downloads: look that it is there, and copy it to another place.'
    )
    await screen.findByText(/^Last backup: Today, .*“a\.strandline-backup”, among the downloads\.$/)
  })

  it('into a chosen place says in which file it is', async () => {
    open({ make: async () => ({ ok: true, last: { ...last, where: 'chosen' } }) })
    tap(await screen.findByText('Back up now'))
    await screen.findByText(/It is in “a\.strandline-backup”\.$/)
  })

  it('that fails says so, loudly, and can be tried again', async () => {
    const say = 'There is no room for the backup there. Make room, or choose another place. No backup was made.'
    open({ make: async () => ({ ok: false, cancelled: false, say }) })
    tap(await screen.findByText('Back up now'))
    const strip = await screen.findByRole('alert')
    expect([strip.textContent, strip.className]).toEqual([say, 'strip strip-bad'])
    expect(screen.getByText('Back up now')).toBeTruthy()
    expect(screen.getByText('No backup was made on this device yet.')).toBeTruthy()
  })

  it('that was called off is no alarm, but is said', async () => {
    open()
    tap(await screen.findByText('Back up now'))
    expect((await screen.findByRole('alert')).className).toBe('strip strip-info')
    expect(page()).toContain('No place was chosen: no backup was made.')
  })

  it('that breaks in a way nobody foresaw says so, and does not stand still', async () => {
    open({ make: () => Promise.reject(new Error('worker gone')) })
    tap(await screen.findByText('Back up now'))
    expect((await screen.findByRole('alert')).textContent).toBe('No backup was made (worker gone). Try again.')
    expect(screen.getByText('Back up now')).toBeTruthy()
  })
})

describe('looking at a backup', () => {
  const moss = { potId: 'moss', colourway: 'Moss', startedAtMs: T - 3_600_000 }
  const plum = { potId: 'plum', colourway: 'Plum', startedAtMs: T - 30 * 3_600_000 }
  const seen = async (more: Partial<RestorePlan>, answers: Partial<KitchenBackup> = {}): Promise<TestKitchen> => {
    const kitchen = open({ look: async () => ({ ok: true, plan: { ...noPlan, ...more } }), ...answers })
    choose(await screen.findByLabelText('Choose a backup to look at'), file)
    await screen.findByText(/^The backup of Today, .*, is whole: 2 batches\.$/)
    return kitchen
  }
  const lines = (): string[] => [...document.querySelectorAll('.keep-facts li')].map((line) => plain(line.textContent))

  it('tells in a line each what it would bring, and nothing of what there is none of', async () => {
    await seen({
      fresh: [moss, plum],
      grown: [moss],
      branched: [moss],
      elsewhere: [plum],
      heldBack: [moss],
      entries: 9,
      beside: 1,
      photos: 2,
      photoBytes: 2_000,
      letGo: 1,
      texts: 3,
      mended: 1,
      conflicts: 2,
      damaged: 1,
      damagedPhotos: 2,
      asHere: 4
    })
    expect(lines()).toEqual([
      'New here: 2 batches: Moss (Today), Plum (Yesterday).',
      'More of what is here: Moss (Today).',
      '1 entry beside the batches: of the shelf, or of what was found of skeins.',
      'Continued on two devices: Moss (Today). Both branches are kept and shown in the record.',
      'On the stove of another device when this was saved: Plum (Yesterday). Nothing of it will call here; its record asks whether you carry on.',
      'Left as it is, for it is on the stove here: Moss (Today). Restore again when it has ended.',
      '2 photos and voice notes, 2 kB.',
      '1 photo stays away: let go before.',
      '3 drafts, protocols and settings.',
      '1 entry damaged here and whole there: the whole one takes the place, the damaged one is kept aside.',
      '2 entries under a number that is taken here by another: ours stands, theirs is kept aside and shown in the record.',
      '1 entry was damaged where the backup was made, and will be shown as damaged.',
      '2 photos were damaged where the backup was made.',
      'Settings of this device stay as they are.'
    ])
  })

  it('that brings only what is no batch’s own can be brought in: a stock, a verdict on a skein', async () => {
    await seen({ entries: 2, beside: 2 })
    expect(lines()).toEqual(['2 entries beside the batches: of the shelf, or of what was found of skeins.'])
    expect(screen.getByRole('button', { name: /Bring it in/ })).toBeTruthy()
  })

  it('that brings nothing says so, and offers only to close', async () => {
    await seen({ asHere: 5 })
    expect(lines()).toEqual(['Everything in it is here already.'])
    expect(screen.queryByRole('button', { name: /Bring it in/ })).toBeNull()
    tap(screen.getByText('Close'))
    await screen.findByLabelText('Choose a backup to look at')
  })

  it('of many batches names five and counts the rest', async () => {
    const many = Array.from({ length: 8 }, (_, nth) => ({ ...moss, potId: `${nth}`, colourway: `P${nth}` }))
    await seen({ fresh: many })
    expect(lines()[0]).toMatch(/^New here: 8 batches: P0 .*P4 \(Today\) and 3 more\.$/)
  })

  it('that has no room here says how much is missing, and is not brought in', async () => {
    await seen({ fresh: [moss], photos: 1, photoBytes: 9_000_000, roomBytes: 2_000_000 })
    expect(plain((await screen.findByRole('alert')).textContent)).toMatch(
      /^Its photos take 9(\.0)? MB, and 2(\.0)? MB are left here\. Make room first\.$/
    )
    expect(screen.queryByRole('button', { name: /Bring it in/ })).toBeNull()
    tap(screen.getByText('Leave it'))
    await screen.findByLabelText('Choose a backup to look at')
  })

  it('is brought in by a held pad, with the very file that was looked at', async () => {
    const asked: unknown[] = []
    const kitchen = await seen(
      { fresh: [moss], entries: 7 },
      {
        restore: async (given, plan) => {
          asked.push(given, plan.digest)
          return { ok: true, batches: 1, entries: 7, texts: 2, heldBack: 1, notKept: null }
        }
      }
    )
    const pad = screen.getByRole('button', { name: /Bring it in/ })
    tap(pad)
    expect(asked).toEqual([])
    await hold(pad)
    const strip = await screen.findByRole('alert', undefined, { timeout: 3_000 })
    expect(plain(strip.textContent)).toContain(
      'In: 1 batch, 7 entries, 2 drafts, protocols and settings. 1 batch was left alone: on the stove here.'
    )
    expect(asked).toEqual([file, 'd'])
    tap(screen.getByText('Open the Dye book'))
    expect(kitchen.route.value).toBe('#/dye-book')
  })

  it('that breaks off while it is brought in says what is safe', async () => {
    const instead = 'The records here are as they were. Restore again.'
    await seen(
      { fresh: [moss] },
      { restore: async () => ({ ok: false, say: 'The restore broke off (full).', instead }) }
    )
    await hold(screen.getByRole('button', { name: /Bring it in/ }))
    const strip = await screen.findByRole('alert', undefined, { timeout: 3_000 })
    expect([strip.textContent, strip.className]).toEqual([
      `The restore broke off (full). ${instead}`,
      'strip strip-bad'
    ])
    await screen.findByLabelText('Choose a backup to look at')
  })
})

describe('room on this device', () => {
  const line = {
    potId: 'moss',
    colourway: 'Moss',
    startedAtMs: T,
    photos: 2,
    sounds: 1,
    bytes: 1_290_000,
    backedUp: false,
    hashes: ['a', 'b'],
    swatchHashes: ['c']
  }
  const letGo = async (): Promise<void> => {
    const pad = await screen.findByRole('button', { name: /Let go: Moss/ })
    await hold(pad)
  }

  it('offers what can be let go, and says what no backup holds yet', async () => {
    open({ trimmable: async () => [line, { ...line, potId: 'plum', colourway: 'Plum', sounds: 0, backedUp: true }] })
    await screen.findByRole('button', { name: /Let go: Moss/ })
    const said = [...document.querySelectorAll('.keep-line-words')].map(({ textContent }) => plain(textContent))
    expect(said).toEqual([
      'Moss (Today)2 photos, 1 voice note, 1.3 MB · in no backup yet',
      'Plum (Today)2 photos, 1.3 MB'
    ])
  })

  it('lets go of a batch’s pictures and of its skein’s, each in its own record, with the reason', async () => {
    let reads = 0
    const kitchen = open({ trimmable: async () => (++reads === 1 ? [line] : []) })
    const kept: unknown[] = []
    const keep = async (...asked: unknown[]) => {
      kept.push(asked)
      return { ok: true } as const
    }
    const sent: unknown[] = []
    kitchen.send = async (...asked: unknown[]) => {
      sent.push(asked)
      return { ok: true } as const
    }
    kitchen.swatches = async () => ({ keep }) as never
    await letGo()
    await screen.findByText('No photos or voice notes of ended batches are kept.', undefined, { timeout: 3_000 })
    const why = 'to make room'
    expect(sent).toEqual([
      ['moss', { type: 'TrimMedia', sha256: 'a', why }],
      ['moss', { type: 'TrimMedia', sha256: 'b', why }]
    ])
    expect(kept).toEqual([['moss', [{ type: 'MediaTrimmed', sha256: 'c', why }], [], expect.any(String)]])
  })

  it.each([
    [
      'says what could not be stored',
      async () => ({ keep: async () => ({ ok: false, say: 'Not saved. Full.' }) }),
      'Not saved. Full.'
    ],
    [
      'says so where that can’t be opened',
      () => Promise.reject(new Error('no module')),
      'The photos of its skein stay: what lets them go can’t be opened now. Try again.'
    ],
    [
      'says so where there is nothing for it',
      undefined,
      'The photos of its skein stay: what lets them go can’t be opened now. Try again.'
    ]
  ])('of a skein %s', async (_, swatches, say) => {
    const kitchen = open({ trimmable: async () => [{ ...line, hashes: [] }] })
    kitchen.swatches = swatches as never
    await letGo()
    expect((await screen.findByRole('alert', undefined, { timeout: 3_000 })).textContent).toBe(say)
    expect(screen.getByRole('button', { name: /Let go: Moss/ })).toBeTruthy()
  })

  it('stops at the first picture that could not be let go, and says why', async () => {
    const kitchen = open({ trimmable: async () => [line] })
    const sent: unknown[] = []
    kitchen.send = async (...asked: unknown[]) => {
      sent.push(asked)
      return { ok: false, refusal: null, say: 'Not saved. The store is full.' } as const
    }
    await letGo()
    expect((await screen.findByRole('alert', undefined, { timeout: 3_000 })).textContent).toBe(
      'Not saved. The store is full.'
    )
    expect(sent).toHaveLength(1)
  })

  it('says so where it can’t be told which batches hold pictures', async () => {
    open({ trimmable: () => Promise.reject(new Error('gone')) })
    await waitFor(() => expect(page()).toContain('Which batches hold photos can’t be read now.'))
  })
})
