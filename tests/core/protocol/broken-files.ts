// At least two broken texts for every problem code, each as small as can be.
import type { ProblemCode } from '../../../src/core/protocol/problem-codes.ts'

/** A good header with these steps, two spaces in. */
export const withSteps = (steps: string, header = ''): string =>
  `strandline: 1\ntitle: Test\n${header}steps:\n${steps
    .trim()
    .split('\n')
    .map((line) => `  ${line}`)
    .join('\n')}\n`

const acid = 'materials:\n  acid: {kind: acid, strength: 5 %, amount: 2 % owf}\n'
const add = (amount: string, header = acid): string => withSteps(`- add: "${amount}"`, header)
const input = (fields: string): string => withSteps('- rinse', `inputs:\n  depth: {ask: Depth?, ${fields}}\n`)
const hold = (time: string): string => withSteps(`- hold: {for: ${time}}`)
const nested = (depth: number): string => withSteps(`- do: ${'['.repeat(depth)}${']'.repeat(depth)}`)
const many = (n: number): string => withSteps(Array.from({ length: n }, () => '- turn').join('\n'))

export const broken: Record<ProblemCode, string[]> = {
  'empty-file': ['', '  \n\n', '# only a comment\n'],
  'too-large': [
    `strandline: 1\n${'# long\n'.repeat(50_000)}`,
    '\n'.repeat(7000),
    withSteps(`- do: ${'[],'.repeat(9000)}`)
  ],
  'nested-too-deep': [nested(30), nested(5000), `steps:\n${'- '.repeat(200)}a`],
  'forbidden-character': [
    'strandline: 1\ntitle: "a\\u202Eb"\nsteps: [rinse]\n',
    withSteps('- do: a\u0007b'),
    'a\u0000: 1'
  ],
  'not-yaml': ['strandline: 1\ntitle: "open\nsteps: [rinse]\n', withSteps('- hold: {for: 6 min'), 'a: b: c\n'],
  'tab-indent': ['strandline: 1\nsteps:\n\t- rinse\n', 'strandline: 1\ntitle: T\nsteps:\n- hold:\n\t\tfor: 6 min\n'],
  'many-documents': [`${withSteps('- rinse')}---\n${withSteps('- rinse')}`, 'strandline: 1\n---\n---\n'],
  anchor: [withSteps('- do: &a x\n- do: *a'), withSteps('- hold: &h {for: 6 min}')],
  tag: [withSteps('- do: !shout x'), withSteps('- !!map {hold: 6 min}')],
  'duplicate-key': [withSteps('- hold: {for: 6 min, for: 7 min}'), `title: B\n${withSteps('- rinse')}`],
  'unknown-field': [
    withSteps('- hold: {four: 6 min}'),
    withSteps('- rinse', 'tilte: B\n'),
    withSteps('- until: {ask: {grade: bath, enough: trace, of: x}, at most: 2, steps: [rinse]}')
  ],
  'missing-field': [
    withSteps('- lower: {hands: 30 s}'),
    'strandline: 1\nsteps: [rinse]\n',
    withSteps('- until: {ask: {grade: bath, enough: trace}, steps: [rinse]}')
  ],
  'wrong-kind': [
    withSteps('- hold: {for: [6 min]}'),
    withSteps('- heat: true'),
    'steps: rinse\nstrandline: 1\ntitle: T\n',
    'just words\n'
  ],
  'unknown-value': [
    withSteps('- hold: {for: 6 min, late: never}'),
    'strandline: 2\ntitle: T\nsteps: [rinse]\n',
    withSteps('- until: {ask: {grade: bath, enough: nearly}, at most: 2, steps: [rinse]}')
  ],
  'bad-name': [
    withSteps('- hold: {for: 6 min, id: "1/2"}'),
    withSteps('- rinse: {marks: in and out}'),
    withSteps('- alongside: {a/b: [rinse]}')
  ],
  'too-long-text': [`strandline: 1\ntitle: ${'x'.repeat(81)}\nsteps: [rinse]\n`, withSteps(`- do: ${'x'.repeat(81)}`)],
  'out-of-limits': [
    withSteps('- repeat: {times: 61, steps: [rinse]}'),
    withSteps('- choice: {ask: Which?, answers: {one: []}}'),
    'strandline: 1\ntitle: T\nsteps: []\n'
  ],
  'unknown-word': [
    withSteps('- lwoer: {to: band}'),
    withSteps('- simmer'),
    withSteps('- repeat: {times: 2, steps: [boil]}')
  ],
  'many-words': [withSteps('- hold:\n  for: 6 min'), withSteps('- {rinse: , spin: }')],
  'no-word': [withSteps('- 5'), withSteps('- {}'), withSteps('- [rinse]')],
  'unknown-material': [
    add('30 mL of vinegr'),
    add('1/2 of salt'),
    withSteps('- rinse', 'materials:\n  mix: {kind: stock, parts: {gone: 1}}\n')
  ],
  'unknown-input': [
    withSteps('- hold: {for: "{soak}"}'),
    withSteps('- repeat: {times: often, steps: [rinse]}'),
    withSteps('- do: Lower {band}')
  ],
  'unknown-moment': [
    withSteps('- wait: 10 min after all in'),
    `${withSteps('- rinse: {id: A}')}gaps: [{from: A, to: B, at most: 1 h}]\n`,
    withSteps('- enter: {marks: all in}\n- wait: {until: all inn}')
  ],
  'moment-may-not-come': [
    withSteps('- choice: {ask: Which?, answers: {yes: [rinse: {id: R}], no: []}}\n- wait: {until: 5 min after R}'),
    withSteps('- until: {ask: {grade: bath, enough: clear}, at most: 2, steps: [rinse: {id: R}]}\n- wait: R')
  ],
  'moment-comes-later': [
    withSteps('- wait: R\n- rinse: {id: R}'),
    withSteps('- alongside:\n    a: [wait: B, rinse: {id: A}]\n    b: [wait: A, rinse: {id: B}]')
  ],
  'duplicate-id': [
    withSteps('- rinse: {id: R}\n- spin: {id: R}'),
    withSteps('- rinse: {id: R}\n- spin: {marks: R}'),
    withSteps('- rinse', 'inputs:\n  band: {ask: Bands?, kind: count}\n'),
    withSteps('- add: {id: A, amount: 1 mL of acid, yarn: lifted}\n- rinse: {id: A-lift}', acid)
  ],
  'shares-over-whole': [
    withSteps('- add: 2/3 of acid\n- add: 1/2 of acid', acid),
    withSteps('- repeat: {times: 3, steps: [add: 1/2 of acid]}', acid)
  ],
  'share-of-nothing': [
    add('1/2 of acid', 'materials:\n  acid: {kind: acid, strength: 5 %}\n'),
    withSteps('- rinse', 'materials:\n  a: {kind: acid, amount: 1/2 of b}\n')
  ],
  'rest-unclear': [
    withSteps('- add: 1/2 of acid\n- add: rest of acid\n- add: rest of acid', acid),
    withSteps('- repeat: {times: 2, steps: [add: the rest of acid]}', acid)
  ],
  'liquor-missing': [add('1 g/L of acid'), withSteps('- fill')],
  'no-band': [withSteps('- lower: band'), withSteps('- add: {amounts: {J1: 1 mL of acid}}', acid)],
  'items-missing': [
    withSteps('- for each: {steps: [rinse]}'),
    withSteps('- for each: {jar: [], steps: [rinse]}'),
    withSteps('- alongside: {label: Both}', acid)
  ],
  'items-backwards': [
    withSteps('- for each: {band: {from: 3, to: 1}, steps: [rinse]}'),
    withSteps(
      '- for each: {band: {from: 5, to: n}, steps: [rinse]}',
      'inputs:\n  n: {ask: n?, kind: count, default: 2}\n'
    )
  ],
  'item-unknown': [
    withSteps('- for each: {jar: [J1, J2], steps: [add: {amounts: {J1: 1 mL of acid}}]}', acid),
    withSteps('- for each: {jar: [J1], steps: [add: {of: acid, amounts: {J1: 1 mL, J2: 2 mL}}]}', acid)
  ],
  'nothing-to-wait-for': [withSteps('- hold'), withSteps('- wait: {late: shift}'), withSteps('- wait: {until: {}}')],
  'two-times': [withSteps('- hold: {for: 6 min, until: 10 min}'), withSteps('- wait: 10 min and 20 min')],
  'least-over-most': [
    withSteps('- hold: {for: 6 min, at least: 8 min}'),
    input('kind: count, least: 5, most: 2'),
    withSteps('- measure: {what: pH, least: 5, most: 4}')
  ],
  'gap-backwards': [
    `${withSteps('- rinse: {id: A}\n- spin: {id: B}')}gaps: [{from: B, to: A, at most: 1 h}]\n`,
    `${withSteps('- rinse: {id: A}')}gaps: [{from: A, to: A, at most: 1 h}]\n`
  ],
  'away-with-heat-on': [
    withSteps('- heat: 80 °C\n- hold: {for: 10 min, away: true}\n- heat: off'),
    withSteps('- alongside:\n    a: [soak: {for: 1 h, away: true}]\n    b: [heat: 80 °C, heat: off]')
  ],
  'cool-with-heat-on': [
    withSteps('- heat: 80 °C\n- cool: 40 °C\n- heat: off'),
    withSteps('- heat: 80 °C\n- choice: {ask: Off?, answers: {yes: [heat: off], no: []}}\n- cool: 40 °C\n- heat: off')
  ],
  'heat-left-on': [
    withSteps('- heat: 80 °C'),
    withSteps('- heat: 80 °C\n- choice: {ask: Off?, answers: {yes: [heat: off], no: []}}')
  ],
  'default-outside': [
    input('kind: count, default: 9, most: 5'),
    input('kind: choice, default: red, choices: [blue, green]')
  ],
  'too-many-steps': [many(501), withSteps('- repeat: {times: 60, steps: [repeat: {times: 60, steps: [rinse]}]}')],
  'lasts-too-long': [
    withSteps('- repeat: {times: 3, steps: [hold: 30 days]}'),
    withSteps('- wait: 40 days\n- wait: 21 days')
  ],
  empty: [hold('" "'), add(' ')],
  'too-long': [
    withSteps(`- wait: {until: 1.${'0'.repeat(70)} min}`),
    withSteps(`- cool: {until: 4${'0'.repeat(70)} °C}`)
  ],
  'not-a-number': [add('lots of acid'), input('kind: number, default: many')],
  'comma-ambiguous': [add('1,500 mL of acid'), input('kind: mass, default: "2,500 g"')],
  'digits-grouped': [add('1,500,000 mL of acid'), add('1,500.5 mL of acid')],
  'unit-missing': [
    hold('30'),
    withSteps('- heat: 80\n- heat: off'),
    withSteps('- add: all of acid', acid.replace('2 % owf', '2')),
    withSteps('- add: {of: acid, amount: 2}', acid),
    withSteps('- fill: 20')
  ],
  'unit-unknown': [hold('30 moons'), add('30 fingers of acid')],
  'cup-without-country': [add('1 cup of acid'), input('kind: volume, default: 1 cup')],
  'tablespoon-without-country': [add('2 tbsp of acid'), input('kind: volume, default: 2 tablespoons')],
  'teaspoon-without-country': [add('1 tsp of acid'), input('kind: volume, default: 1 teaspoon')],
  'fluid-ounce-without-country': [add('1 fl oz of acid'), input('kind: volume, default: 8 fluid ounces')],
  'pint-without-country': [add('1 pint of acid'), input('kind: volume, default: 1 pt')],
  'quart-without-country': [
    add('1 quart of acid', `kitchen: metric\n${acid}`),
    input('kind: volume, default: 1 quart')
  ],
  'gallon-without-country': [add('1 gallon of acid'), input('kind: volume, default: 1 gal')],
  'grain-unclear': [add('50 grain of acid'), add('5 gr of acid')],
  'of-missing': [add('30 mL'), add('2 % owf')],
  'name-unclear': [add('30 mL of $acid'), add('1/2 of (acid)')],
  'percent-of-what': [add('2 %'), add('2 % of the goods')],
  'ratio-unclear': [withSteps('- fill: 20:3'), withSteps('- fill: {}', 'liquor: 2 L\n')],
  'one-value-wanted': [add('20..30 mL of acid'), withSteps('- hold: {for: at least 20..30 min}')],
  'two-amounts': [add('1 L 200 mL of acid'), add('1 kg 200 g of acid')],
  'out-of-range': [
    withSteps('- heat: {to: 80 °C, rate: 0 °C/min}\n- heat: off'),
    withSteps('- heat: 180 °C\n- heat: off'),
    hold('70 days')
  ],
  'range-backwards': [
    hold('30..20 min'),
    withSteps('- heat: 90..85 °C\n- heat: off'),
    withSteps('- check: {ph: 5..4}')
  ],
  'clock-unclear': [hold('"1:30"'), withSteps('- cool: {until: 2:15}')],
  'not-a-volume': [withSteps('- fill: 30 g'), input('kind: volume, default: 30 g')],
  'not-a-mass': [input('kind: mass, default: 3 L'), input('kind: mass, default: 1 US cup')],
  'not-a-percent': [
    input('kind: percent, default: 3 g'),
    withSteps('- rinse', 'materials:\n  a: {kind: acid, strength: 5 g}\n')
  ],
  'not-a-length-of-time': [hold('a while'), withSteps('- lift: {to: rod, out of bath: briefly}')],
  'not-a-temperature': [withSteps('- hold: {for: 6 min, at: warm}'), withSteps('- rinse: hand-warm')],
  'not-a-rate': [
    withSteps('- heat: {to: 80 °C, rate: slowly}\n- heat: off'),
    withSteps('- heat: {to: 80 °C, rate: 5 °C}\n- heat: off')
  ],
  'not-a-depth': [withSteps('- lower: a bit'), withSteps('- lower: {to: 12 cm, of: 1/2 of the skein}')]
}
