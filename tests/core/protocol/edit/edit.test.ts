import { describe, expect, it } from 'vitest'
import { applyEdit, type Edit } from '../../../../src/core/protocol/edit/edit.ts'

const text = `# A method of the house.
strandline: 1
title: Moss   # working title
about: |
  First line.

  Second line.
inputs:
  bands: {ask: How many?, kind: count}
materials:
  acid: {kind: acid, strength: 5 %}   # vinegar
  salt: powder
steps:
  # Wet it first.
  - soak: at least 30 min
  - rinse

  - hold: {for: 6 min, at: 85..90 °C}   # steady
  - hold:
      for: 25..30 min
      # not longer
      late: shift
  - repeat:   # dips
      times: 2
      steps: [squeeze, hold: 3 min]
  - add: {id: A1, amount: 30 mL of acid}
`

const edited = (edit: Edit, from = text): string => {
  const made = applyEdit(from, edit)
  if (!made.ok) throw new Error(made.problem)
  return made.text
}

/** The lines that went and came: "- old", "+ new". The rest must be the same, in the same order. */
const changes = (edit: Edit, from = text): string[] => {
  const [before, after] = [from.split('\n'), edited(edit, from).split('\n')]
  let start = 0
  while (start < before.length && before[start] === after[start]) start++
  let end = 0
  while (end < before.length - start && end < after.length - start && before.at(-1 - end) === after.at(-1 - end)) end++
  return [
    ...before.slice(start, before.length - end).map((line) => `- ${line}`),
    ...after.slice(start, after.length - end).map((line) => `+ ${line}`)
  ]
}

describe('a field is set', () => {
  it.each<[string, Edit, string[]]>([
    [
      'in braces, in place',
      { type: 'set', path: ['steps', 2], field: 'for', value: '7 min' },
      ['-   - hold: {for: 6 min, at: 85..90 °C}   # steady', '+   - hold: {for: 7 min, at: 85..90 °C}   # steady']
    ],
    [
      'in braces, a new one behind the others',
      { type: 'set', path: ['steps', 2], field: 'forbid', value: ['stir', 'lift, drop'] },
      [
        '-   - hold: {for: 6 min, at: 85..90 °C}   # steady',
        '+   - hold: {for: 6 min, at: 85..90 °C, forbid: [stir, "lift, drop"]}   # steady'
      ]
    ],
    [
      'in lines, a new one where its form has it',
      { type: 'set', path: ['steps', 3], field: 'at', value: '85 °C' },
      ['+       at: 85 °C']
    ],
    [
      'beside a bare value, which gets its name',
      { type: 'set', path: ['steps', 0], field: 'at', value: '30 °C' },
      ['-   - soak: at least 30 min', '+   - soak: {for: at least 30 min, at: 30 °C}']
    ],
    [
      'in the short form itself',
      { type: 'set', path: ['steps', 0], field: 'for', value: '1 h' },
      ['-   - soak: at least 30 min', '+   - soak: 1 h']
    ],
    [
      'of a bare word, in its short form',
      { type: 'set', path: ['steps', 1], field: 'at', value: '35 °C' },
      ['-   - rinse', '+   - rinse: 35 °C']
    ],
    [
      'of a bare word, another',
      { type: 'set', path: ['steps', 1], field: 'hands', value: '2 min' },
      ['-   - rinse', '+   - rinse: {hands: 2 min}']
    ],
    [
      'of a construct',
      { type: 'set', path: ['steps', 4], field: 'times', value: 3 },
      ['-       times: 2', '+       times: 3']
    ],
    [
      'of the header, with its comment kept',
      { type: 'set', path: [], field: 'title', value: 'Fern: dark' },
      ['- title: Moss   # working title', '+ title: "Fern: dark"   # working title']
    ],
    [
      'of the header, new and in its place',
      { type: 'set', path: [], field: 'liquor', value: '20:1' },
      ['+ liquor: 20:1']
    ],
    [
      'of a material in its short form',
      { type: 'set', path: ['materials', 'salt'], field: 'label', value: 'sea salt' },
      ['-   salt: powder', '+   salt: {kind: powder, label: sea salt}']
    ],
    [
      'with braces of a placeholder in quotes',
      { type: 'set', path: ['steps', 0], field: 'for', value: '{each}' },
      ['-   - soak: at least 30 min', '+   - soak: "{each}"']
    ],
    [
      'over several lines, one of them changed',
      { type: 'set', path: [], field: 'about', value: 'First line.\n\nAnother line.\n' },
      ['-   Second line.', '+   Another line.']
    ]
  ])('%s', (_, edit, expected) => expect(changes(edit)).toEqual(expected))

  it('in a long line, which is not broken', () => {
    const value = `${'a long sentence, '.repeat(8)}it ends`
    expect(changes({ type: 'set', path: ['steps', 2], field: 'detail', value })).toHaveLength(2)
  })
})

describe('a field is taken away', () => {
  it.each<[string, Edit, string[]]>([
    [
      'from braces',
      { type: 'unset', path: ['steps', 2], field: 'for' },
      ['-   - hold: {for: 6 min, at: 85..90 °C}   # steady', '+   - hold: {at: 85..90 °C}   # steady']
    ],
    [
      'from lines; the comment above another stays',
      { type: 'unset', path: ['steps', 3], field: 'for' },
      ['-       for: 25..30 min']
    ],
    [
      'and was the last: the bare word is left',
      { type: 'unset', path: ['steps', 0], field: 'for' },
      ['-   - soak: at least 30 min', '+   - soak']
    ],
    [
      'from the header',
      { type: 'unset', path: [], field: 'about' },
      ['- about: |', '-   First line.', '- ', '-   Second line.']
    ]
  ])('%s', (_, edit, expected) => expect(changes(edit)).toEqual(expected))
})

describe('steps', () => {
  it.each<[string, Edit, string[]]>([
    [
      'are added in the style of the file',
      { type: 'add', parent: ['steps'], index: 2, kind: 'hold', values: { late: 'shift', for: '5 min' } },
      ['+   - hold: {for: 5 min, late: shift}']
    ],
    [
      'are added before a comment that belongs to the first',
      { type: 'add', parent: ['steps'], index: 0, kind: 'turn' },
      ['+   - turn']
    ],
    [
      'are added in brackets',
      { type: 'add', parent: ['steps', 4, 'repeat', 'steps'], index: 1, kind: 'turn' },
      ['-       steps: [squeeze, hold: 3 min]', '+       steps: [squeeze, turn, hold: 3 min]']
    ],
    [
      'are removed with what stands in them',
      { type: 'remove', path: ['steps', 3] },
      ['-   - hold:', '-       for: 25..30 min', '-       # not longer', '-       late: shift']
    ],
    [
      'take their own comments along',
      { type: 'move', from: ['steps', 0], to: { parent: ['steps'], index: 1 } },
      [
        '-   # Wet it first.',
        '-   - soak: at least 30 min',
        '-   - rinse',
        '+   - rinse',
        '+   # Wet it first.',
        '+   - soak: at least 30 min'
      ]
    ],
    [
      'are wrapped as they were written',
      { type: 'wrap', path: ['steps', 2], count: 2, in: 'repeat', values: { times: 3 } },
      [
        '-   - hold: {for: 6 min, at: 85..90 °C}   # steady',
        '-   - hold:',
        '-       for: 25..30 min',
        '-       # not longer',
        '-       late: shift',
        '+   - repeat:',
        '+       times: 3',
        '+       steps:',
        '+         - hold: {for: 6 min, at: 85..90 °C}   # steady',
        '+         - hold:',
        '+             for: 25..30 min',
        '+             # not longer',
        '+             late: shift'
      ]
    ],
    [
      'are unwrapped, and the comment of the loop stays',
      { type: 'unwrap', path: ['steps', 4] },
      [
        '-   - repeat:   # dips',
        '-       times: 2',
        '-       steps: [squeeze, hold: 3 min]',
        '+   # dips',
        '+   - squeeze',
        '+   - hold: 3 min'
      ]
    ],
    [
      'are doubled under a new id',
      { type: 'duplicate', path: ['steps', 5] },
      ['+   - add: {id: A2, amount: 30 mL of acid}']
    ],
    ['get another word', { type: 'rename', path: ['steps', 3], to: 'soak' }, ['-   - hold:', '+   - soak:']]
  ])('%s', (_, edit, expected) => expect(changes(edit)).toEqual(expected))

  it('that leave a list in brackets empty, and come back to it', () => {
    const one = 'strandline: 1\ntitle: T\nsteps:\n  - rinse # only\n'
    const none = edited({ type: 'remove', path: ['steps', 0] }, one)
    expect(none).toBe('strandline: 1\ntitle: T\nsteps: []\n')
    expect(edited({ type: 'add', parent: ['steps'], index: 0, kind: 'rinse' }, none)).toBe(
      'strandline: 1\ntitle: T\nsteps:\n  - rinse\n'
    )
  })

  it('moved into brackets leave their comments above them', () => {
    expect(
      changes({ type: 'move', from: ['steps', 3], to: { parent: ['steps', 4, 'repeat', 'steps'], index: 2 } })
    ).toEqual([
      '-   - hold:',
      '-       for: 25..30 min',
      '-       # not longer',
      '-       late: shift',
      '-   - repeat:   # dips',
      '-       times: 2',
      '-       steps: [squeeze, hold: 3 min]',
      '+   - repeat:   # dips',
      '+       times: 2',
      '+       # not longer',
      '+       steps: [squeeze, hold: 3 min, hold: {for: 25..30 min, late: shift}]'
    ])
  })
})

describe('the only step of a list takes its comment along', () => {
  const choice = `strandline: 1
title: T
steps:
  - choice:
      ask: Which?
      answers:
        one: []
        two:
          # why
          - rinse # warm
  - spin
`
  const from = ['steps', 0, 'choice', 'answers', 'two', 0]

  it('into an empty list', () => {
    expect(
      edited({ type: 'move', from, to: { parent: ['steps', 0, 'choice', 'answers', 'one'], index: 0 } }, choice)
    ).toBe(choice.replace('one: []\n        two:\n', 'one:\n').replace('# warm\n', '# warm\n        two: []\n'))
  })

  it('to right behind what it stood in', () => {
    expect(edited({ type: 'move', from, to: { parent: ['steps'], index: 1 } }, choice)).toBe(
      choice.replace('two:\n          # why\n          - rinse # warm', 'two: []\n  # why\n  - rinse # warm')
    )
  })
})

describe('inputs, materials, gaps', () => {
  it.each<[string, Edit, string[]]>([
    [
      'are added',
      {
        type: 'add',
        parent: ['materials'],
        index: 1,
        kind: 'material',
        name: 'stock Y',
        values: { kind: 'stock', strength: '1 %' }
      },
      ['+   stock Y: {kind: stock, strength: 1 %}']
    ],
    [
      'begin a list that was not there',
      { type: 'add', parent: ['gaps'], index: 0, kind: 'gap', values: { from: 'A1', to: 'A2', 'at most': '2 h' } },
      ['+ gaps:', '+   - {from: A1, to: A2, at most: 2 h}']
    ],
    [
      'end a list with the last',
      { type: 'remove', path: ['inputs', 'bands'] },
      ['- inputs:', '-   bands: {ask: How many?, kind: count}']
    ],
    [
      'change their order',
      { type: 'move', from: ['materials', 'salt'], to: { parent: ['materials'], index: 0 } },
      [
        '-   acid: {kind: acid, strength: 5 %}   # vinegar',
        '-   salt: powder',
        '+   salt: powder',
        '+   acid: {kind: acid, strength: 5 %}   # vinegar'
      ]
    ],
    [
      'get another name',
      { type: 'rename', path: ['materials', 'salt'], to: 'sea salt' },
      ['-   salt: powder', '+   sea salt: powder']
    ],
    [
      'are doubled under a free name',
      { type: 'duplicate', path: ['inputs', 'bands'] },
      ['+   bands2: {ask: How many?, kind: count}']
    ]
  ])('%s', (_, edit, expected) => expect(changes(edit)).toEqual(expected))
})

describe('the way a file is written is kept', () => {
  it('line ends of another system', () => {
    const crlf = text.replaceAll('\n', '\r\n')
    const made = edited({ type: 'add', parent: ['steps'], index: 1, kind: 'repeat' }, crlf)
    expect(made.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    expect(made.replaceAll('\r\n', '\n')).toBe(edited({ type: 'add', parent: ['steps'], index: 1, kind: 'repeat' }))
  })

  it('a byte order mark, and a last line without an end', () => {
    const bare = `\uFEFF${text.trimEnd()}`
    expect(edited({ type: 'add', parent: ['steps'], index: 9, kind: 'turn' }, bare)).toBe(`${bare}\n  - turn`)
    expect(edited({ type: 'remove', path: ['steps', 5] }, bare)).toBe(bare.slice(0, bare.lastIndexOf('\n')))
  })

  it('fields on lines of their own, dashes under their key, four columns', () => {
    const wide = 'strandline: 1\ntitle: T\nsteps:\n- hold:\n      for: 6 min\n- soak:\n      for: 1 h\n'
    expect(
      changes({ type: 'add', parent: ['steps'], index: 9, kind: 'hold', values: { for: '1 h', late: 'shift' } }, wide)
    ).toEqual(['+ - hold:', '+       for: 1 h', '+       late: shift'])
  })

  it('JSON stays JSON', () => {
    const json = '{"strandline": 1, "title": "T", "steps": ["rinse", {"hold": "6 min"}]}'
    const made = edited({ type: 'set', path: ['steps', 1], field: 'late', value: 'shift' }, json)
    expect(JSON.parse(made).steps).toEqual(['rinse', { hold: { for: '6 min', late: 'shift' } }])
    const wrapped = edited({ type: 'wrap', path: ['steps', 0], count: 2, in: 'repeat' }, json)
    expect(JSON.parse(wrapped).steps).toEqual([{ repeat: { times: 4, steps: ['rinse', { hold: '6 min' }] } }])
  })
})

describe('what can’t be done is said in words', () => {
  it.each<[string, Edit, string]>([
    ['a place where nothing is', { type: 'remove', path: ['steps', 40] }, 'There is nothing at this place.'],
    [
      'a step into itself',
      { type: 'move', from: ['steps', 4], to: { parent: ['steps', 4, 'repeat', 'steps'], index: 0 } },
      'A step can’t go into itself.'
    ],
    ['a word that there is not', { type: 'add', parent: ['steps'], index: 0, kind: 'dye' }, 'A dye can’t stand here.'],
    [
      'a step among the materials',
      { type: 'add', parent: ['materials'], index: 0, kind: 'hold' },
      'A hold can’t stand here.'
    ],
    [
      'more steps than there are',
      { type: 'wrap', path: ['steps', 4], count: 5, in: 'repeat' },
      'There are not so many steps.'
    ],
    ['a step that holds none', { type: 'unwrap', path: ['steps', 1] }, 'rinse holds no steps.'],
    ['a name that is taken', { type: 'rename', path: ['materials', 'salt'], to: 'acid' }, 'acid is there already.'],
    [
      'a sign that does not show',
      { type: 'set', path: [], field: 'title', value: 'a\u202eb' },
      'This value can’t be written.'
    ]
  ])('%s', (_, edit, problem) => expect(applyEdit(text, edit)).toEqual({ ok: false, problem }))

  it('a text with a mistake, and where it is', () => {
    const answer = applyEdit(`${text}  - hold: {for: 6 min\n`, { type: 'remove', path: ['steps', 0] })
    expect(answer).toMatchObject({ ok: false, problem: expect.stringMatching(/in line 2\d: mend it there first/) })
  })
})
