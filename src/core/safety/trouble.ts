// What is said first when something goes wrong at the stove. The first line is always the act; nothing here lets
// anybody go while the heat is on.

/** The same words as pot/events.ts; safety comes before pot and can't ask it. */
export type Trouble = 'boil-over' | 'power-cut' | 'gas-out' | 'dropped-skein' | 'burn' | 'must-leave' | 'other'

/** The act, then what follows. Common practice, no source; the burn from memory. */
const lines: Record<Trouble, [act: string, ...rest: string[]]> = {
  'boil-over': [
    'Heat off. Hands out.',
    'Let it settle. Do not move the pot.',
    'Gas: look that the flame did not go out under it.',
    'Wipe up when the ring is cool. Floor dry.'
  ],
  'power-cut': [
    'Turn the ring off. It may restart by itself.',
    'The hood is dead: open a window.',
    'Lid on. Keep your hands out in the dark.',
    'When the power is back: read the temperature first.'
  ],
  'gas-out': [
    'Gas off at the tap. Open a window.',
    'No switches, no flame, no relighting.',
    'Smell of gas that stays: out of the house, call for help from outside.',
    'Heat again only when the air is clear.'
  ],
  'dropped-skein': [
    'Heat off. Do not reach in.',
    'Fetch it with tongs or the rod.',
    'Wipe the floor dry before you lift.',
    'Look at the tag: is it this pot’s?'
  ],
  burn: [
    'Heat off. Cool running water on it, 20 min.',
    'Rings and wet clothes off, unless they stick.',
    'Then cover it. No ice, no grease.',
    'Large, on the face, a child, or something in the eye: call for help now.'
  ],
  'must-leave': [
    'Heat off. Then ask somebody to stay.',
    'Look that the ring is off.',
    'Lid on, handles in, children and pets out.',
    'Nobody there: no heat.'
  ],
  other: [
    'Heat off. Hands out.',
    'Look at the pot, the floor and yourself.',
    'Hurt: cool running water, call for help.',
    'Read the temperature before you go on.'
  ]
}

/** `act`: one line, at once. `then`: what follows, in order. */
export function troubleLines(kind: Trouble): { act: string; then: string[] } {
  const [act, ...rest] = lines[kind]
  // biome-ignore lint/suspicious/noThenProperty: a list of lines, never awaited
  return { act, then: rest }
}
