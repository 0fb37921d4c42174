import { describe, expect, it } from 'vitest'
import {
  changed,
  fitting,
  type History,
  latest,
  redone,
  STEPS_MOST,
  stepBetween,
  undone
} from '../../../src/ui/screens/workshop/history.ts'

const start = (text: string): History => ({ text, undo: [], redo: [] })
const times = (n: number, history: History, way: (history: History) => History): History =>
  Array.from({ length: n }).reduce<History>((here) => way(here), history)

describe('undo', () => {
  it('goes back two hundred steps and more to the very first text, and forward again', () => {
    let history = start('a: 1\n')
    const texts = [history.text]
    for (let i = 0; i < 300; i++) {
      const at = (i * 7) % history.text.length
      const text = i % 3 === 0 ? history.text.slice(0, at) + history.text.slice(at + 1) : `${history.text}${i}\n`
      history = changed(history, text, false)
      texts.push(history.text)
    }
    expect(times(300, history, undone).text).toBe(texts[0])
    expect(times(120, times(300, history, undone), redone).text).toBe(texts[120])
  })

  it('takes the letters of one word together, and a pause parts them', () => {
    let history = start('')
    for (const text of ['h', 'he', 'hea', 'heat']) history = changed(history, text, text !== 'h')
    history = changed(history, 'heat of', false)
    history = changed(history, 'heat off', true)
    expect(undone(history).text).toBe('heat')
    expect(undone(undone(history)).text).toBe('')
  })

  it('after something new has nothing to redo', () => {
    const history = changed(undone(changed(start('a'), 'ab', false)), 'ax', false)
    expect(redone(history)).toBe(history)
  })

  it('keeps the newest steps where there are too many', () => {
    let history = start('')
    for (let i = 0; i <= STEPS_MOST; i++) history = changed(history, `${history.text}x`, false)
    expect(history.undo).toHaveLength(STEPS_MOST)
    expect(times(STEPS_MOST + 5, history, undone).text).toBe('x')
  })
})

describe('a kept history', () => {
  it('is cut where a step does not fit the text: it would tear it', () => {
    const good = { at: 0, was: '', now: 'ab' }
    expect(fitting({ text: 'abc', undo: [{ at: 9, was: '', now: 'zz' }, good], redo: [] }).undo).toEqual([good])
    expect(fitting({ text: 'abc', undo: [], redo: [{ at: 0, was: 'x', now: '' }] }).redo).toEqual([])
  })

  it('leaves out old steps that are larger than what is worth keeping', () => {
    const small = { at: 0, was: '', now: 'x' }
    const large = { at: 0, was: '', now: 'y'.repeat(300_000) }
    expect(latest([small, large, small, small])).toEqual([small, small])
    expect(latest([small, small])).toHaveLength(2)
  })
})

describe('a step', () => {
  it('is only what differs', () => {
    expect(stepBetween('hold: 6 min', 'hold: 16 min')).toEqual({ at: 6, was: '', now: '1' })
    expect(stepBetween('aaa', 'aa')).toEqual({ at: 2, was: 'a', now: '' })
  })
})
