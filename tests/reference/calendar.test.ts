// What an iCalendar parser lets pass, and what has to be asked besides. Source of the rules: RFC 5545 (2009), sections
// 3.1 (lines), 3.3.6 (durations), 3.3.11 (text), 3.6.1 (events), 3.6.6 (alarms), as told in data/09_validators.json;
// that file says of itself that the rules are from memory and the library's behaviour was observed.
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { durationValue } from '../../src/core/calendar/content-line.ts'
import { faultsOf } from '../core/calendar/judge.ts'
import data from './data/09_validators.json' with { type: 'json' }

const { ics_fixture: good, ics_expected: expected } = data

const parses = (text: string): boolean => {
  try {
    return ICAL.parse(text).length > 0
  } catch {
    return false
  }
}

describe('the judges of a calendar file', () => {
  it('the parser reads the fixture as it is meant, and our own judge has nothing against it', () => {
    const calendar = new ICAL.Component(ICAL.parse(good))
    const event = calendar.getFirstSubcomponent('vevent') as ICAL.Component
    const alarm = event.getFirstSubcomponent('valarm') as ICAL.Component
    const lengthS = (of: ICAL.Component, name: string) => (of.getFirstPropertyValue(name) as ICAL.Duration).toSeconds()
    expect(event.getFirstPropertyValue('summary')).toBe(expected.summary)
    expect(lengthS(event, 'duration')).toBe(expected.duration_s)
    expect(lengthS(alarm, 'trigger')).toBe(expected.trigger_s)
    expect(faultsOf(good)).toEqual([])
  })

  it('and we write the same two lengths of time with the same signs', () => {
    expect(good).toContain(`TRIGGER:${durationValue(expected.trigger_s * 1000)}\r\n`)
    expect(good).toContain(`DURATION:${durationValue(expected.duration_s * 1000)}\r\n`)
  })

  it.each([
    ['an alarm without a trigger', good.replace(/TRIGGER.*\r\n/, ''), 'VALARM has not one TRIGGER'],
    ['an event without a UID', good.replace(/UID.*\r\n/, ''), 'VEVENT has not one UID'],
    ['line ends that are LF only', good.replaceAll('\r\n', '\n'), 'has a line end that is not CRLF'],
    [
      'an unfolded line of 200 octets',
      good.replace('SUMMARY:', `SUMMARY:${'x'.repeat(172)}`),
      'has a line of 200 octets'
    ],
    ['an event without a time stamp', good.replace(/DTSTAMP.*\r\n/, ''), 'VEVENT has not one DTSTAMP'],
    ['a shown alarm without words', good.replace('DESCRIPTION:Add acid\r\n', ''), 'VALARM has not one DESCRIPTION'],
    ['an alarm without an action', good.replace('ACTION:DISPLAY\r\n', ''), 'VALARM has not one ACTION']
  ])('the parser lets pass %s, and our own judge does not', (_what, text, fault) => {
    expect(text).not.toBe(good)
    expect(parses(text)).toBe(true)
    expect(faultsOf(text)).toContain(fault)
  })

  it('both refuse a component that is not closed', () => {
    const open = good.replace('END:VEVENT\r\n', '')
    expect(parses(open)).toBe(false)
    expect(faultsOf(open)).not.toEqual([])
  })

  it('a length of time that leaves out the minutes between hours and seconds is refused', () => {
    expect(faultsOf(good.replace('PT45M', 'PT1H5S'))).toContain('DURATION is wrong')
  })

  it('a fold counts octets and never falls inside a character', () => {
    const folded = good.replace('SUMMARY:Raise', `SUMMARY:${'é'.repeat(33)}\r\n é`)
    expect(faultsOf(folded)).toEqual([])
    const long = good.replace('SUMMARY:Raise', `SUMMARY:${'é'.repeat(34)}\r\n é`)
    expect(faultsOf(long)).toContain('has a line of 76 octets')
    const cut = good.replace('Raise', '\ud83e\r\n \uddf6')
    expect(faultsOf(cut)).toContain('is not well-formed Unicode')
  })

  it('a semicolon in a text is escaped', () => {
    expect(faultsOf(good.replace('Raise', 'Raise;'))).toContain('"Raise; to 85 C\\, hold" is not escaped')
  })
})
