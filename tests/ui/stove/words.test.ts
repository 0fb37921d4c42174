import { describe, expect, it } from 'vitest'
import { giantSay, lateSay, lengthSay, roughSay } from '../../../src/ui/screens/stove/words.ts'

const second = 1000
const minute = 60 * second
const hour = 60 * minute

describe('times on the Stove', () => {
  it('count seconds under two minutes and minutes above', () => {
    expect(lengthSay(24 * second)).toBe('0:24')
    expect(lengthSay(119 * second)).toBe('1:59')
    expect(lengthSay(2 * minute)).toBe('2 min')
    expect(lengthSay(7 * minute + 18 * second)).toBe('7 min')
    expect(lengthSay(100 * minute)).toBe('1 h 40')
    expect(lengthSay(12 * hour)).toBe('12 h')
    expect(roughSay(20 * second)).toBe('under 1 min')
    expect(roughSay(70 * hour)).toBe('3 days')
  })

  it('never show 0:00 before it is due', () => {
    expect(giantSay(1)).toBe('0:01')
    expect(giantSay(999)).toBe('0:01')
    expect(giantSay(0)).toBe('0:00')
  })

  it('give the giant time to the second under an hour and to the minute above', () => {
    expect(giantSay(59 * minute + 59 * second)).toBe('59:59')
    expect(giantSay(hour)).toBe('1 h 00')
    expect(giantSay(95 * minute - 1)).toBe('1 h 35')
  })

  it('say lateness only from a second on', () => {
    expect(lateSay(0)).toBe('now')
    expect(lateSay(999)).toBe('now')
    expect(lateSay(12 * second)).toBe('0:12 late')
    expect(lateSay(3 * hour)).toBe('3 h late')
  })
})
