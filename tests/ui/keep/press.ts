import { fireEvent } from '@testing-library/preact'
import { DEAD_MS, forgetTaps } from '../../../src/ui/parts/guard.ts'

export function tap(pad: HTMLElement): void {
  forgetTaps()
  fireEvent.click(pad)
}

/** After the pad has come to life. */
export async function hold(pad: HTMLElement): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, DEAD_MS + 20))
  fireEvent.keyDown(pad, { key: 'Enter' })
}

export function choose(field: HTMLElement, file: File): void {
  Object.defineProperty(field, 'files', { value: [file], configurable: true })
  fireEvent.change(field)
}
