// What the screens are given of the shelf.
import type { ReadonlySignal } from '@preact/signals'
import type { InputProblem } from '../core/protocol/model.ts'
import type { ShelfCommand } from '../core/shelf/commands.ts'
import type { Draw } from '../core/shelf/draws.ts'
import type { Level } from '../core/shelf/levels.ts'
import type { Shelved } from '../core/shelf/state.ts'
import type { BookLine, SendOptions } from './kitchen.ts'

/** `level` null: it is not counted, or nobody ever told how much there is. `readOnly`: why it can't be changed. */
export type OnShelf = { item: Shelved; level: Level | null; readOnly: string | null }

/** `problems`: each wrong field of the command by its name; empty where it was not for a field. */
export type ShelfSent = { ok: true } | { ok: false; problems: InputProblem[]; say: string }

/** A batch that drew from a thing. */
export type BatchDrawn = BookLine & { draws: Draw[] }

export type KitchenShelf = {
  /** Everything, what is put away too, in the order it came; kept up with pots and other tabs while somebody looks. */
  things: ReadonlySignal<OnShelf[]>
  /** Things that can't be read at all, and why. */
  broken: ReadonlySignal<{ itemId: string; say: string }[]>
  /** Why the shelf can't be read; null: it was. What was read before stands. */
  unread: ReadonlySignal<string | null>
  send(itemId: string, command: ShelfCommand, options?: Pick<SendOptions, 'commandId' | 'agoMs'>): Promise<ShelfSent>
  /** The batches that drew from a thing, latest first. */
  batches(itemId: string): Promise<BatchDrawn[]>
  again(): Promise<void>
}
