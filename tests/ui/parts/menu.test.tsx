// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { Menu } from '../../../src/ui/nav.tsx'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { aKitchen } from '../dye-book/a-kitchen.ts'
import { noon } from '../stove/fixtures.ts'
import { plum } from '../stove/pots.ts'

beforeEach(() => {
  forgetTaps()
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
})
afterEach(cleanup)

it('offers the coming alerts as a file, says that it is a snapshot, and says why when there is none', async () => {
  const kitchen = aKitchen({ journals: [plum()], nowMs: noon })
  kitchen.cancelCalendar = async () => ({ ok: false, refusal: null, say: 'No calendar file was saved yet.' })
  render(<Menu kitchen={kitchen} onClose={() => {}} />)
  fireEvent.click(screen.getByText('Alerts to the calendar'))
  await screen.findByText(/does not move when a pot does/)
  forgetTaps()
  fireEvent.click(screen.getByText('Take them out'))
  await screen.findByText('No calendar file was saved yet.')
})

it('offers none where no pot is on', () => {
  render(<Menu kitchen={aKitchen({ nowMs: 0 })} onClose={() => {}} />)
  expect(screen.queryByText('Alerts to the calendar')).toBeNull()
})
