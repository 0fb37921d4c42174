import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { calendarOf } from '../../../src/core/calendar/calendar-of.ts'
import { contentLine, durationValue, textValue, uidPart } from '../../../src/core/calendar/content-line.ts'
import { metricUnits } from '../../../src/core/quantity/units.ts'
import { Bench } from '../pot/given.ts'
import { act, dose, MIN, programme, wait } from '../pot/programmes.ts'
import { faultsOf } from './judge.ts'

/** Signs that end a line or a value, forge a property, weigh up to four octets, join, or are no characters at all. */
const nasty = fc.oneof(
  fc.constantFrom('\n', '\r', '\r\n', ';', ',', '\\', ':', '"', '\\n', '\t', '\0', '\x1b', '\x7f', '\x85', '\u2028'),
  fc.constantFrom('é', '€', '染', '🧶', '👩🏽‍🌾', '\ud83e', '\uddf6', '\u202e', 'END:VEVENT', 'BEGIN:VALARM', ' '),
  fc.string({ unit: 'binary', maxLength: 8 })
)
const text = fc.array(nasty, { maxLength: 500 }).map((parts) => parts.join('').slice(0, 500))

/** What a TEXT value is to be read back as: new lines as one sign, controls as a space, half characters replaced. */
function meant(words: string): string {
  return words
    .replace(/\r\n|[\r\n\u0085\u2028\u2029]/g, '\n')
    .replace(/[^\n\P{Cc}]/gu, ' ')
    .toWellFormed()
}

/** The value as a reader of the file finds it, by rules of its own: unfolded, then unescaped. */
function readBack(lines: string): string {
  const value = lines
    .replace(/\r\n[ \t]/g, '')
    .replace(/\r\n$/, '')
    .replace('SUMMARY:', '')
  return value.replace(/\\([\\;,nN])/g, (_, sign: string) => (/n/i.test(sign) ? '\n' : sign))
}

describe('hostile texts in a calendar', () => {
  it('any text comes back as it was meant, in lines of at most 75 octets that cut no character (seed 9)', () => {
    fc.assert(
      fc.property(text, (words) => {
        const lines = contentLine(`SUMMARY:${textValue(words)}`)
        for (const row of lines.split('\r\n')) expect(Buffer.byteLength(row)).toBeLessThanOrEqual(75)
        expect(readBack(lines)).toBe(meant(words))
      }),
      { seed: 9, numRuns: 1_000 }
    )
  })

  it('no name of a pot, a step, a cup or a material breaks the file or forges an event (seed 10)', () => {
    fc.assert(
      fc.property(text, text, text, text, fc.boolean(), (colourway, words, of, potId, cancel) => {
        const more = { knot: words, call: words, detail: words, forbids: [words] }
        const bench = Bench.start(programme([wait('w', 10 * MIN), dose('A1', 30, of, more), act('off', more)]))
        const pots = [
          { potId, state: { ...bench.run, status: 'running' as const, pot: { ...bench.run.pot, colourway } } }
        ]
        const wanted = { pots, nowMs: bench.nowMs, sequence: 3, before: [], units: metricUnits, rehearsal: false }
        const file = calendarOf({ ...wanted, cancel, tzOffsetMin: () => 0 })
        expect(faultsOf(file.text)).toEqual([])
        const events = new ICAL.Component(ICAL.parse(file.text)).getAllSubcomponents('vevent')
        expect(events).toHaveLength(2)
        for (const event of events) {
          expect(event.getFirstPropertyValue('summary')).toBe(meant(`${colourway || 'A'}: ${words}`))
          expect(event.getAllSubcomponents('valarm').length).toBe(cancel ? 0 : event === events[0] ? 2 : 1)
        }
      }),
      { seed: 10, numRuns: 300 }
    )
  })

  it('two different names never give the same part of a UID (seed 11)', () => {
    fc.assert(
      fc.property(text, text, (one, other) => {
        expect(uidPart(one)).toMatch(/^[A-Za-z0-9._-]*$/)
        expect(uidPart(one) === uidPart(other)).toBe(one === other)
      }),
      { seed: 11, numRuns: 500 }
    )
  })

  it('any length of time is written so that the parser reads the same whole seconds (seed 12)', () => {
    fc.assert(
      fc.property(fc.integer({ min: -400 * 3_600_000, max: 400 * 3_600_000 }), (ms) => {
        // The grammar of 3.3.6, which the parser does not hold to: no part is left out between two others.
        expect(durationValue(ms)).toMatch(/^-?PT(\d+H(\d+M(\d+S)?)?|\d+M(\d+S)?|\d+S)$/)
        const read = ICAL.Duration.fromString(durationValue(ms)).toSeconds()
        expect(Math.abs(read)).toBe(Math.ceil(Math.abs(ms) / 1000))
        expect(read === 0 || Math.sign(read) === Math.sign(ms)).toBe(true)
      }),
      { seed: 12, numRuns: 1_000 }
    )
  })
})
