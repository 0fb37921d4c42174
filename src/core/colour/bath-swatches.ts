/** Colours to tell baths apart at a glance, with names that stay apart in the ear. Only marks on a screen: no claim
 * about any dye. */
export const bathSwatches: readonly { name: string; colour: string }[] = [
  { name: 'Moss', colour: '#4f7a3a' },
  { name: 'Sea', colour: '#2f7a75' },
  { name: 'Slate', colour: '#4f6a86' },
  { name: 'Indigo', colour: '#33406e' },
  { name: 'Heather', colour: '#8a6aa0' },
  { name: 'Plum', colour: '#8a3654' },
  { name: 'Rose', colour: '#c8607a' },
  { name: 'Brick', colour: '#a4412a' },
  { name: 'Rust', colour: '#b06a24' },
  { name: 'Ochre', colour: '#c9951f' },
  { name: 'Walnut', colour: '#6e4a30' },
  { name: 'Coal', colour: '#45423f' }
]
