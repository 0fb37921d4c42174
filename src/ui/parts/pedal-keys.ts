// Which keys are a pedal's. A page-turner pedal is a keyboard with one or two keys; the dyer may teach us which.
import type { LearnedKey, Settings } from '../kitchen.ts'

/** `next`: says the call again, goes to the next pot, moves among answers. */
export type PedalRole = 'done' | 'next'
export type Pressed = Pick<KeyboardEvent, 'key' | 'code'>
export type Learned = Pick<Settings, 'pedalDone' | 'pedalNext'>

/** What page-turners send as they are delivered. Common practice, no source. */
export const delivered: Record<PedalRole, readonly string[]> = {
  done: ['PageDown', 'ArrowRight'],
  next: ['PageUp', 'ArrowLeft']
}

/** With one key learned for "done" and none for the other, the board has one pedal: the delivered keys are a keyboard's
 * then. With only the other learned, "done" keeps the delivered ones. */
export function roleOf(pressed: Pressed, { pedalDone, pedalNext }: Learned): PedalRole | null {
  if (pedalDone !== null && isSame(pedalDone, pressed)) return 'done'
  if (pedalNext !== null && isSame(pedalNext, pressed)) return 'next'
  if (pedalDone !== null) return null
  if (delivered.done.includes(pressed.key)) return 'done'
  return pedalNext === null && delivered.next.includes(pressed.key) ? 'next' : null
}

/** Short presses move the choice and a long one takes it. */
export function isOnePedal({ pedalDone, pedalNext }: Learned): boolean {
  return pedalDone !== null && pedalNext === null
}

export function isSame(learned: LearnedKey, { key, code }: Pressed): boolean {
  return learned.key === key && learned.code === code
}

const modifiers = ['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock', 'NumLock', 'ScrollLock', 'Fn', 'FnLock']
const nameless = ['', 'Unidentified', 'Process', 'Dead', 'Compose']
const offered = 'Set the pedal to Page Down, Page Up, an arrow, Space or Enter.'

/** Why a key can't be a pedal's, in words; null: it can. */
export function whyNot(pressed: Pressed & Pick<KeyboardEvent, 'ctrlKey' | 'altKey' | 'metaKey'>): string | null {
  const { key } = pressed
  if (key === 'Tab') return 'Tab moves between the pads and stays as it is.'
  if (key === 'Escape') return 'Escape closes what is open and stays as it is.'
  if (modifiers.includes(key)) return `${keyWords(pressed)} does nothing alone. ${offered}`
  if (pressed.ctrlKey || pressed.altKey || pressed.metaKey)
    return `A key together with Ctrl, Alt or Meta is the browser’s. ${offered}`
  if (nameless.includes(key)) return `The browser has no name for this key. ${offered}`
  if (/^(F([1-9]|1[0-2])|Browser.*|ContextMenu)$/.test(key)) return `${keyWords(pressed)} is the browser’s. ${offered}`
  if (/^\d$/.test(key)) return `${key} is typed in numbers, and 1 to 4 choose a pot. ${offered}`
  if (key === 'Backspace' || key === 'Delete') return `${key} is needed for typing. ${offered}`
  // A space is typed too, but many pedals send nothing else; in a text field it stays a space.
  if (key !== ' ' && [...key].length === 1) return `“${key}” is needed for typing. ${offered}`
  return null
}

/** A key as it is called: "Page Down", "arrow right", "Space". */
export function keyWords({ key }: Pick<Pressed, 'key'>): string {
  if (key === ' ') return 'Space'
  const arrow = /^Arrow(\w+)$/.exec(key)
  if (arrow) return `arrow ${arrow[1]?.toLowerCase()}`
  return key.replace(/([a-z])([A-Z])/g, '$1 $2')
}
