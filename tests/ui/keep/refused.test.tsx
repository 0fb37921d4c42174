// @vitest-environment happy-dom
// The screen over the real reading of a real file, damaged in ways that happen.
import { cleanup, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { KeepScreen } from '../../../src/ui/screens/keep/index.tsx'
import { backupOf, type Device, device, journalOf, photo, picture, potOn, send } from '../../app/backup/device.ts'
import { kitchenWith } from './a-backup.ts'
import { choose } from './press.ts'

async function aFile(): Promise<Uint8Array<ArrayBuffer>> {
  const phone = await device()
  await potOn(phone, 'moss', false)
  await photo(phone, 'moss', picture('a bath'))
  await send(phone, 'moss', { type: 'Abort', reason: 'made for the test' })
  return new Uint8Array(await (await backupOf(phone)).arrayBuffer())
}

async function looked(bytes: BlobPart): Promise<{ said: string; tablet: Device }> {
  const tablet = await device()
  await potOn(tablet, 'plum')
  render(<KeepScreen kitchen={kitchenWith({ look: tablet.backup.look })} />)
  choose(await screen.findByLabelText('Choose a backup to look at'), new File([bytes], 'x.strandline-backup'))
  const strip = await screen.findByRole('alert')
  expect(strip.className).toBe('strip strip-bad')
  expect(screen.queryByRole('button', { name: /Bring it in/ })).toBeNull()
  // It can be chosen again once it is mended.
  expect(screen.getByLabelText('Choose a backup to look at')).toBeTruthy()
  return { said: strip.textContent ?? '', tablet }
}

const again =
  'Nothing on this device was changed. Copy the file again from where it was kept, or take an earlier backup.'

beforeEach(forgetTaps)
afterEach(cleanup)

describe('a backup that is refused says why, and what is safe to do', () => {
  it('cut short', async () => {
    const bytes = await aFile()
    const { said, tablet } = await looked(bytes.slice(0, bytes.length - 40))
    expect(said).toMatch(/^This backup is cut short: it ends after \d+ bytes, before its closing line\. /)
    expect(said).toContain(again)
    expect(await journalOf(tablet)).toMatchObject({ summaries: [{ potId: 'plum' }] })
  })

  it('one bit flipped', async () => {
    const bytes = await aFile()
    const at = Math.floor(bytes.length * 0.7)
    bytes[at] = (bytes[at] ?? 0) ^ 4
    const { said } = await looked(bytes)
    expect(said).toMatch(/^This backup was changed or damaged near byte \d+: .*\. /)
    expect(said).toContain(again)
  })

  it('of a newer version', async () => {
    const bytes = await aFile()
    const { said } = await looked(Buffer.concat([Buffer.from('strandline-backup 2\n'), bytes.slice(20)]))
    expect(said).toBe(
      'This backup is of version 2; this Strandline reads version 1. Nothing on this device was changed. Keep the file. Open Strandline once with a network, so that it brings itself up to date, then restore again.'
    )
  })

  it('no backup at all', async () => {
    const { said } = await looked('strandline: 1\ntitle: A protocol\n')
    expect(said).toBe(
      'This file is no backup of Strandline. Nothing on this device was changed. Choose a file whose name ends in .strandline-backup.'
    )
  })
})
