// Who the new pot is.
import type { Bath, PotIdentity } from '../../../core/pot/events.ts'
import type { ProgrammeInputs } from '../../../core/protocol/model.ts'
import type { BookLine, Kitchen } from '../../kitchen.ts'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { freeLetter, otherBurner } from './fresh-draft.ts'
import { usesOf } from './uses.ts'

/** A bath or a yarn that comes from a pot this book knows nothing of. */
export const notInBook = 'not in this book'

export function burnerOf(draft: StartDraft): string {
  return draft.burner === otherBurner ? draft.otherBurner.trim() : draft.burner
}

/** The pot that stands there already, if any. */
export function clashOf(kitchen: Kitchen, burner: string): string | null {
  for (const { state } of kitchen.pots.value) {
    if (state.status !== 'running' && state.status !== 'held') continue
    if (state.pot.burner === burner && burner !== '') return callName(state.pot)
  }
  return null
}

/** Pots are called by their names: two of one name can't be told apart by ear. */
export function namesake(kitchen: Kitchen, colourway: string): boolean {
  const name = colourway.trim().toLowerCase()
  if (name === '') return false
  return kitchen.pots.value.some(({ state }) => state.status !== 'idle' && state.pot.colourway.toLowerCase() === name)
}

export function callName(pot: { colourway: string; letter: string }): string {
  return pot.colourway === '' ? `Pot ${pot.letter}` : pot.colourway
}

/** The identity of a pot that starts at `nowMs`. Reads an earlier pot's journal where its bath or yarn goes on. */
export async function identityOf(
  kitchen: Kitchen,
  draft: StartDraft,
  inputs: ProgrammeInputs,
  nowMs: number,
  things: readonly OnShelf[]
): Promise<PotIdentity> {
  const letter = freeLetter(kitchen.pots.value)
  const colourway = draft.colourway.trim()
  const recent = await kitchen.book(0, nowMs + 1, 40)
  const uses = usesOf(draft, burnerOf(draft), things)
  const name = `${localDayOf(nowMs)} ${colourway === '' ? `pot ${letter}` : colourway}`
  return {
    potId: kitchen.newId(),
    batchName: unusedName(name, recent),
    colourway: colourway === '' ? `Pot ${letter}` : colourway,
    letter,
    burner: burnerOf(draft),
    colour: draft.colour,
    skeins: inputs.skeins,
    fibre: draft.fibre.trim(),
    parentBatchId: draft.yarnOf === '' || draft.yarnOf === notInBook ? null : draft.yarnOf,
    bath: await bathOf(kitchen, draft.bathOf, recent),
    by: kitchen.settings.value.dyer.trim() || null,
    ...(uses.length > 0 && { uses })
  }
}

async function bathOf(kitchen: Kitchen, potId: string, recent: BookLine[]): Promise<Bath> {
  const used = potId === notInBook
  if (potId !== '' && !used) {
    const earlier = await bathIn(kitchen, potId)
    if (earlier) return { ...earlier, parentBatchId: potId, unknownDyeLeft: true }
  }
  const last = recent[0] ? await bathIn(kitchen, recent[0].potId) : null
  return { bathId: kitchen.newId(), number: (last?.number ?? 0) + 1, parentBatchId: null, unknownDyeLeft: used }
}

async function bathIn(kitchen: Kitchen, potId: string): Promise<Bath | null> {
  const { entries } = await kitchen.entries(potId)
  for (const { event } of entries) if (event.type === 'PotStarted') return event.pot.bath
  return null
}

function unusedName(name: string, recent: BookLine[]): string {
  const names = new Set(recent.map((line) => line.batchName))
  for (let n = 2; n < 100; n++) {
    const next = n === 2 ? name : `${name} ${n - 1}`
    if (!names.has(next)) return next
  }
  return name
}

/** "2031-06-14" where the dyer is. */
export function localDayOf(atMs: number): string {
  const at = new Date(atMs)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
}
