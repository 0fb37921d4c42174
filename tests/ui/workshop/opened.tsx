// The workshop opened on a small protocol, and what a test looks at and takes hold of in it.
import { fireEvent, render, screen } from '@testing-library/preact'
import type { Kitchen } from '../../../src/ui/kitchen.ts'
import { Workshop } from '../../../src/ui/screens/workshop/index.tsx'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'

export const TEXT = `strandline: 1
title: Mine # my own
materials:
  acid: {kind: acid, strength: 5 %}
steps:
  - fill: 2 L
  - add: 10 mL of acid
  - hold: 6 min # by the clock
  - rinse
`

export const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')

export async function open(text = TEXT, kitchen: TestKitchen = aKitchen({ nowMs: 1_000 })): Promise<TestKitchen> {
  await kitchen.drafts.keep({ id: 'd', title: 'Mine', text, changedAtMs: 0, undo: [], redo: [] })
  await reopen(kitchen)
  return kitchen
}

export async function reopen(kitchen: Kitchen): Promise<void> {
  render(<Workshop kitchen={kitchen} draftId="d" />)
  await screen.findByText('Save')
}

export const kept = async (kitchen: Kitchen): Promise<string> => (await kitchen.drafts.read('d'))?.text ?? ''
export const rows = (): string[] =>
  [...document.querySelectorAll('[aria-label="Step by step"] .workshop-row')].map((row) => plain(row.textContent))
export const row = (start: string): HTMLElement => {
  const found = [...document.querySelectorAll<HTMLElement>('.workshop-row')].find((one) =>
    plain(one.textContent).startsWith(start)
  )
  if (!found) throw new Error(`no row begins with ${start}`)
  return found
}
export const pad = (name: string): HTMLElement => screen.getByRole('button', { name })
export const area = (): HTMLTextAreaElement => screen.getByLabelText('The text of the protocol')
export const type = (field: HTMLElement, value: string): void => void fireEvent.input(field, { target: { value } })
export const wide = (px: number): void =>
  void Object.defineProperty(window, 'innerWidth', { value: px, configurable: true })
