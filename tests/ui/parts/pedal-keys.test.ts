import { describe, expect, it } from 'vitest'
import { isOnePedal, keyWords, roleOf, whyNot } from '../../../src/ui/parts/pedal-keys.ts'

const bare = { ctrlKey: false, altKey: false, metaKey: false }
const press = (key: string, code = key): { key: string; code: string } => ({ key, code })
const none = { pedalDone: null, pedalNext: null }

describe('the role of a key', () => {
  it('is that of a delivered page-turner until one is learned', () => {
    const roles = ['PageDown', 'ArrowRight', 'PageUp', 'ArrowLeft', 'Home', 'b'].map((key) => roleOf(press(key), none))
    expect(roles).toEqual(['done', 'done', 'next', 'next', null, null])
  })

  it('is the learned one’s alone from then on', () => {
    const learned = { pedalDone: press(' ', 'Space'), pedalNext: press('Enter') }
    const roles = [
      press(' ', 'Space'),
      press('Enter'),
      press('Enter', 'NumpadEnter'),
      press('PageDown'),
      press('PageUp')
    ]
    expect(roles.map((key) => roleOf(key, learned))).toEqual(['done', 'next', null, null, null])
  })

  it('with only the second learned leaves "done" as delivered, unless that is the key', () => {
    const learned = { pedalDone: null, pedalNext: press('PageDown') }
    expect(['PageDown', 'ArrowRight', 'PageUp'].map((key) => roleOf(press(key), learned))).toEqual([
      'next',
      'done',
      null
    ])
    expect(isOnePedal(learned)).toBe(false)
  })

  it('with only "done" learned is a board of one pedal', () => {
    const learned = { pedalDone: press('PageDown'), pedalNext: null }
    expect(isOnePedal(learned)).toBe(true)
    expect(roleOf(press('PageUp'), learned)).toBeNull()
    expect(isOnePedal(none)).toBe(false)
  })
})

describe('a key that is to be learned', () => {
  it.each(['PageDown', 'PageUp', 'ArrowUp', 'ArrowLeft', ' ', 'Enter', 'Home', 'F13', 'MediaTrackNext'])(
    '%s can be',
    (key) => {
      expect(whyNot({ ...press(key), ...bare })).toBeNull()
    }
  )

  it.each([
    ['Tab', /moves between the pads/],
    ['Escape', /closes what is open/],
    ['Shift', /does nothing alone/],
    ['AltGraph', /does nothing alone/],
    ['F5', /browser’s/],
    ['BrowserBack', /browser’s/],
    ['3', /choose a pot/],
    ['b', /“b” is needed for typing/],
    ['é', /needed for typing/],
    ['Backspace', /needed for typing/],
    ['Dead', /no name/],
    ['Unidentified', /no name/]
  ])('%s can’t be, and it is said why', (key, why) => {
    expect(whyNot({ ...press(key), ...bare })).toMatch(why)
  })

  it('can’t be one that is pressed together with Ctrl', () => {
    expect(whyNot({ ...press('PageDown'), ...bare, ctrlKey: true })).toMatch(/browser’s/)
  })

  it('is called as it is printed', () => {
    expect(['PageDown', ' ', 'ArrowRight', 'Enter', 'MediaTrackNext'].map((key) => keyWords({ key }))).toEqual([
      'Page Down',
      'Space',
      'arrow right',
      'Enter',
      'Media Track Next'
    ])
  })
})
