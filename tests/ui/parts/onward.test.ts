import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { onward } from '../../../src/ui/parts/onward.ts'

function aPage(at: string) {
  const route = signal(at)
  const go = (to: string): void => {
    route.value = to
  }
  return { route, go }
}

describe('the way on after what took its time', () => {
  it('leads on from where it was asked for', () => {
    const page = aPage('#/shelf/add')
    const go = onward(page)
    go('#/shelf/1')
    expect(page.route.value).toBe('#/shelf/1')
  })

  it('leads nowhere for who went elsewhere, however often', () => {
    const page = aPage('#/shelf/add')
    const go = onward(page)
    page.go('#/stove')
    go('#/shelf/1')
    go('#/shelf/1')
    expect(page.route.value).toBe('#/stove')
  })

  it('leads on for who came back to where they asked', () => {
    const page = aPage('#/shelf/add')
    const go = onward(page)
    page.go('#/stove')
    page.go('#/shelf/add')
    go('#/shelf/1')
    expect(page.route.value).toBe('#/shelf/1')
  })
})
