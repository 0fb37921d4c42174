// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, describe, expect, it } from 'vitest'
import { ShareText } from '../../../src/ui/parts/share-text.tsx'
import type { TextSharing } from '../../../src/ui/sharing.ts'

const TEXT = 'strandline: 1\ntitle: Rinse\n'

function show(given: Partial<TextSharing> | null) {
  const saved: string[][] = []
  const sharing = given && { copy: async () => true, paste: null, share: null, ...given }
  const kitchen = { saveFile: (...file: string[]) => void saved.push(file), sharing: signal(sharing) }
  render(<ShareText kitchen={kitchen} title="Rinse" text={TEXT} />)
  return saved
}

const byHand = (): HTMLTextAreaElement | null => screen.queryByLabelText('The text of Rinse')

afterEach(cleanup)

describe('a protocol to share', () => {
  it('is saved as a file of the language', () => {
    const saved = show(null)
    fireEvent.click(screen.getByText('Save as a file'))
    expect(saved).toEqual([['Rinse.yaml', 'application/yaml', TEXT]])
  })

  it('is copied, and says so', async () => {
    const copied: string[] = []
    show({ copy: async (text) => copied.push(text) > 0 })
    fireEvent.click(screen.getByText('Copy the text'))
    await screen.findByText('Copied.')
    expect([copied, byHand()]).toEqual([[TEXT], null])
  })

  it('that could not be copied shows its text, chosen, to be copied by hand', async () => {
    for (const given of [{ copy: async () => false }, null]) {
      show(given)
      fireEvent.click(screen.getByText('Copy the text'))
      await screen.findByText(/Not copied/)
      await waitFor(() => expect(document.activeElement).toBe(byHand()))
      expect(byHand()?.value).toBe(TEXT)
      expect([byHand()?.selectionStart, byHand()?.selectionEnd]).toEqual([0, TEXT.length])
      cleanup()
    }
  })

  it('has no pad for a share sheet that is not there', () => {
    show({})
    expect(screen.queryByText('Share')).toBeNull()
  })

  it('goes to the share sheet; closing it is no failure, a refusal is told', async () => {
    const answers = ['closed', 'failed'] as const
    let asked = 0
    show({ share: async () => answers[asked++] ?? 'shared' })
    fireEvent.click(screen.getByText('Share'))
    await waitFor(() => expect(asked).toBe(1))
    expect(screen.getByRole('status').textContent).toBe('')
    fireEvent.click(screen.getByText('Share'))
    await screen.findByText(/Not shared/)
    fireEvent.click(screen.getByText('Share'))
    await screen.findByText('Shared.')
  })
})
