// A hand at the Stove in tests: opens it with invented pots, taps and presses keys, and hears what was sent.
import { cleanup, fireEvent, render, within } from '@testing-library/preact'
import { afterEach, beforeAll, beforeEach } from 'vitest'
import type { PotCommand } from '../../../src/core/pot/commands.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { forgetShown } from '../../../src/ui/screens/stove/cautions.ts'
import { Stove } from '../../../src/ui/screens/stove/index.tsx'
import type { brew } from './fixtures.ts'
import { type FixtureKitchen, fixtureKitchen, noon } from './fixtures.ts'

export type Journal = ReturnType<typeof brew>

/** Pads lie dead for 0.7 s after they came up; the tests' clock is not the wall's. */
let pageMs = 0
const realNow = performance.now
/** Once in each file: hooks of a module that several files share would stand in the first of them alone. */
export function atTheStove(): void {
  beforeAll(async () => {
    // What a call needs is loaded after the first drawing; here it is there already.
    await import('../../../src/ui/screens/stove/with-pots.tsx')
    await import('../../../src/ui/screens/stove/call.tsx')
    await import('../../../src/ui/screens/stove/sheets/open-sheet.tsx')
    await import('../../../src/ui/screens/stove/sheets/more.tsx')
    await import('../../../src/ui/screens/stove/sheets/deeds-free.tsx')
  })
  beforeEach(() => {
    pageMs = 1_000
    performance.now = () => pageMs
    forgetTaps()
    forgetShown()
  })
  afterEach(() => {
    cleanup()
    performance.now = realNow
  })
}

export function open(...journals: Journal[]): Promise<FixtureKitchen> {
  return openWith(() => {}, journals)
}

/** `prepare`: what the kitchen has beside the usual, before the Stove is drawn. */
export async function openWith(
  prepare: (kitchen: FixtureKitchen) => void,
  journals: Journal[]
): Promise<FixtureKitchen> {
  const kitchen = fixtureKitchen(journals, noon)
  prepare(kitchen)
  render(<Stove kitchen={kitchen} onMenu={() => {}} />)
  await settle()
  return kitchen
}

/** The tests' clock alone, without the wait for pads to be alive. */
export function pass(ms: number): void {
  pageMs += ms
}

/** Drawn, loaded, and long enough ago for every pad to be alive. */
export async function settle(): Promise<void> {
  await drawn()
  pageMs += 2_000
}

export async function drawn(): Promise<void> {
  for (let i = 0; i < 5; i++) await new Promise((done) => setTimeout(done, 0))
}

export async function tap(name: string | RegExp, where: HTMLElement = document.body): Promise<void> {
  fireEvent.click(within(where).getByRole('button', { name }))
  await settle()
}

/** Down and up again, on what has the focus, as a browser does it. */
export async function key(name: string, more: { code?: string; repeat?: boolean } = {}): Promise<void> {
  const on = document.activeElement ?? document.body
  fireEvent.keyDown(on, { key: name, ...more })
  fireEvent.keyUp(on, { key: name, ...more })
  await settle()
}

/** A finger or a foot that stays a little longer than it must. */
const HELD_MS = 750

export async function hold(name: string | RegExp, where: HTMLElement = document.body): Promise<void> {
  const pad = within(where).getByRole('button', { name })
  fireEvent.pointerDown(pad)
  await held()
  fireEvent.pointerUp(pad)
  await settle()
}

export async function keyHeld(name: string): Promise<void> {
  const on = document.activeElement ?? document.body
  fireEvent.keyDown(on, { key: name })
  await held()
  fireEvent.keyUp(on, { key: name })
  await settle()
}

async function held(): Promise<void> {
  pageMs += HELD_MS
  await new Promise((done) => setTimeout(done, HELD_MS))
}

export const call = (): HTMLElement => document.querySelector('.call') as HTMLElement
export const sheet = (): HTMLElement => document.querySelector('dialog') as HTMLElement
export const text = (node: Element | null): string => (node?.textContent ?? '').replaceAll('\u00a0', ' ')
export const sent = (kitchen: FixtureKitchen): PotCommand[] =>
  kitchen.sent.map((s) => s.command).filter((c) => c.type !== 'ShowCaution')
