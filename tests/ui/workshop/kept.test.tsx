// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keptDrafts } from '../../../src/app/drafts.ts'
import { memoryKept } from '../../../src/shell/settings/kept.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { Workshop } from '../../../src/ui/screens/workshop/index.tsx'
import { aKitchen } from '../dye-book/a-kitchen.ts'
import { area, kept, open, pad, reopen, row, rows, TEXT, type, wide } from './opened.tsx'

beforeEach(() => {
  forgetTaps()
  wide(390)
})
afterEach(cleanup)

describe('nothing typed is lost', () => {
  it('the next visit finds the text and can still undo it', async () => {
    const kitchen = await open()
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '9 min')
    await waitFor(async () => expect(await kept(kitchen)).toContain('9 min'))
    cleanup()
    await reopen(kitchen)
    expect(rows()).toContain('Hold 9 min')
    fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true })
    await waitFor(() => expect(rows()).toContain('Hold 6 min'))
    fireEvent.keyDown(document.body, { key: 'Z', ctrlKey: true, shiftKey: true })
    await waitFor(() => expect(rows()).toContain('Hold 9 min'))
  })

  it('typed into a field while the text has a mistake waits, over a reload, until it is put in', async () => {
    const broken = TEXT.replace('- rinse', '- [rinse')
    const kitchen = await open(broken)
    fireEvent.click(row('Hold'))
    for (const typed of ['9', '9 m', '9 min']) type(screen.getByLabelText('For'), typed)
    fireEvent.click(row('Hold'))
    const waits = /Not in the text yet: “9 min”, typed for Hold 6 min, for, while the text had a mistake/
    expect(await screen.findByText(waits)).toBeTruthy()
    await waitFor(async () => expect((await kitchen.drafts.read('d'))?.waiting).toHaveLength(1))
    cleanup()
    await reopen(kitchen)
    fireEvent.click(pad('Put it in'))
    expect(await screen.findByText(/The text has a mistake in line \d+: mend it there first/)).toBeTruthy()
    fireEvent.click(pad('Text'))
    type(area(), TEXT)
    fireEvent.click(pad('Put it in'))
    await waitFor(async () => expect(await kept(kitchen)).toBe(TEXT.replace('6 min', '9 min')))
    expect(screen.queryByText(waits)).toBeNull()
    await waitFor(async () => expect((await kitchen.drafts.read('d'))?.waiting).toBeUndefined())
  })

  it('that was typed there is no longer waited with once it was typed anew into the mended text', async () => {
    const kitchen = await open(TEXT.replace('- rinse', '- [rinse'))
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '9 min')
    fireEvent.click(pad('Text'))
    type(area(), TEXT)
    fireEvent.click(pad('Steps'))
    type(screen.getByLabelText('For'), '8 min')
    await waitFor(async () => expect(await kept(kitchen)).toContain('8 min'))
    fireEvent.click(row('Hold'))
    expect(screen.queryByText(/Not in the text yet/)).toBeNull()
  })

  it('a draft that another tab changed meanwhile stays, and this one is kept beside it', async () => {
    const store = memoryKept()
    const kitchen = aKitchen({ nowMs: 1_000 })
    kitchen.drafts = keptDrafts(store)
    kitchen.newId = () => 'mine'
    await open(TEXT, kitchen)
    const elsewhere = keptDrafts(store)
    const theirs = await elsewhere.read('d')
    if (!theirs) throw new Error('the draft is not there')
    await elsewhere.keep({ ...theirs, text: TEXT.replace('6 min', '5 min') })
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '9 min')
    expect(await screen.findByText(/changed in another tab. Both are kept/)).toBeTruthy()
    type(screen.getByLabelText('For'), '10 min')
    const texts = async (): Promise<(string | undefined)[]> => {
      const found = await Promise.all(['d', 'mine'].map((id) => keptDrafts(store).read(id)))
      return found.map((draft) => draft?.text)
    }
    await waitFor(async () =>
      expect(await texts()).toEqual([TEXT.replace('6 min', '5 min'), TEXT.replace('6 min', '10 min')])
    )
    fireEvent.click(pad('Open it by itself'))
    expect(kitchen.route.value).toBe('#/protocols/write/mine')
  })

  it('the keys for undo are left to the text area inside it', async () => {
    const kitchen = await open()
    fireEvent.click(pad('Text'))
    type(area(), `${TEXT}# more\n`)
    fireEvent.keyDown(area(), { key: 'z', ctrlKey: true })
    expect(area().value).toBe(`${TEXT}# more\n`)
    await waitFor(async () => expect(await kept(kitchen)).toBe(`${TEXT}# more\n`))
    fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true })
    await waitFor(async () => expect(await kept(kitchen)).toBe(TEXT))
  })

  it('what the store refuses is told, stays on the screen, and is tried again', async () => {
    const kitchen = await open()
    const { keep } = kitchen.drafts
    kitchen.drafts.keep = async () => ({ ok: false, refusal: null, say: 'There is no room left.' })
    cleanup()
    await reopen(kitchen)
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '7 min')
    expect(await screen.findByText('Not kept: There is no room left.')).toBeTruthy()
    expect((screen.getByLabelText('For') as HTMLInputElement).value).toBe('7 min')
    await waitFor(async () => expect(await kept(kitchen)).toBe(TEXT))
    kitchen.drafts.keep = keep
  })

  it('a draft that is gone is told as gone', async () => {
    render(<Workshop kitchen={aKitchen({ nowMs: 0 })} draftId="none" />)
    expect(await screen.findByText('That draft is not here any more.')).toBeTruthy()
  })
})
