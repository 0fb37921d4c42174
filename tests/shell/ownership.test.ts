import { describe, expect, it, vi } from 'vitest'
import { memoryLocks } from '../../src/shell/ownership/memory-locks.ts'
import { ownership } from '../../src/shell/ownership/ownership.ts'
import { tabs } from '../../src/shell/ownership/tabs.ts'

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

describe('one tab owns', () => {
  it('the first; a second follows, and it is known which is which', async () => {
    const locks = memoryLocks()
    const first = ownership('s', locks)
    await first.settled
    const second = ownership('s', locks)
    await second.settled
    expect([first.owns(), second.owns()]).toEqual([true, false])
  })

  it('the second when it says "work here", even if the first is frozen; the first hears that it lost', async () => {
    const locks = memoryLocks()
    const first = ownership('s', locks)
    await first.settled
    const lost = vi.fn()
    first.onChange(lost)
    const second = ownership('s', locks)
    await second.settled
    await second.take()
    await turn()
    expect([first.owns(), second.owns()]).toEqual([false, true])
    expect(lost).toHaveBeenCalledTimes(1)
  })

  it('the second by itself when the first is closed', async () => {
    const locks = memoryLocks()
    const first = ownership('s', locks)
    await first.settled
    const second = ownership('s', locks)
    await second.settled
    locks.closeHolder()
    await turn()
    expect(second.owns()).toBe(true)
  })

  it('whichever said "work here" last, back and forth', async () => {
    const locks = memoryLocks()
    const first = ownership('s', locks)
    await first.settled
    const second = ownership('s', locks)
    await second.settled
    for (const [taker, other] of [
      [second, first],
      [first, second],
      [second, first]
    ] as const) {
      await taker.take()
      await turn()
      expect([taker.owns(), other.owns()]).toEqual([true, false])
    }
  })

  it('every tab where the browser has no locks: the add-only journal keeps them apart', async () => {
    const alone = ownership('s', null)
    await alone.settled
    expect(alone.owns()).toBe(true)
  })
})

describe('tabs talk', () => {
  it('a follower asks and gets the answer to its own question', async () => {
    const owner = tabs('talk')
    const follower = tabs('talk')
    const stop = owner.onWord((word) => {
      if (word.kind === 'ask') owner.say({ kind: 'answer', askId: word.askId, answer: `done ${word.ask}` })
    })
    expect(await Promise.all([follower.ask('1', 'lift'), follower.ask('2', 'stir')])).toEqual([
      'done lift',
      'done stir'
    ])
    stop()
    owner.close()
    follower.close()
  })

  it('a follower is told when the owner does not answer, and the owner that thaws later sees that it is too late', async () => {
    const owner = tabs('talk')
    const follower = tabs('talk')
    const heard: number[] = []
    owner.onWord((word) => {
      if (word.kind === 'ask') heard.push(word.untilMs)
    })
    expect(await follower.ask('1', 'lift', 20)).toBeNull()
    expect(heard).toHaveLength(1)
    expect(heard[0]).toBeLessThanOrEqual(Date.now())
    owner.close()
    follower.close()
  })
})
