// @vitest-environment happy-dom
import { afterEach, describe, expect, it } from 'vitest'
import { onDropped } from '../../src/shell/arrivals/dropped.ts'
import { onLaunched } from '../../src/shell/arrivals/launched.ts'
import { readTextFile } from '../../src/shell/files/text-file.ts'

const mine = new File(['strandline: 1\n'], 'mine.yaml', { lastModified: 1 })

function drag(type: string, files: File[], types = ['Files']): Event {
  const event = new Event(type, { bubbles: true, cancelable: true })
  Object.assign(event, { dataTransfer: { types, files, dropEffect: 'none' }, relatedTarget: null })
  document.body.dispatchEvent(event)
  return event
}

describe('files dropped on the page', () => {
  let end = (): void => {}
  afterEach(() => end())

  it('are handed over, and the browser does not leave the page for them', () => {
    const taken: string[] = []
    end = onDropped((files) => void taken.push(...files.map(({ name }) => name)))
    expect(drag('dragover', []).defaultPrevented).toBe(true)
    expect(document.documentElement.hasAttribute('data-drop')).toBe(true)
    expect(drag('drop', [mine]).defaultPrevented).toBe(true)
    expect([taken, document.documentElement.hasAttribute('data-drop')]).toEqual([['mine.yaml'], false])
  })

  it('carried away again leave no mark', () => {
    end = onDropped(() => {})
    drag('dragover', [])
    drag('dragleave', [])
    expect(document.documentElement.hasAttribute('data-drop')).toBe(false)
  })

  it('are all that is heeded: a word dragged into a field goes there', () => {
    const taken: File[][] = []
    end = onDropped((files) => void taken.push(files))
    expect(drag('drop', [], ['text/plain']).defaultPrevented).toBe(false)
    expect(taken).toEqual([])
  })
})

describe('files opened from the file manager', () => {
  type Consumer = (params: { files?: { name: string; getFile(): Promise<File> }[] }) => void

  const handle = (file: File) => ({ name: file.name, getFile: async () => file })

  /** One page after another in one tab. */
  function tab() {
    const stored = new Map<string, string>()
    return (kind: 'navigate' | 'reload') => {
      const taken: File[] = []
      let consumer: Consumer = () => {}
      onLaunched((files) => void taken.push(...files), {
        launchQueue: { setConsumer: (given) => (consumer = given) },
        sessionStorage: {
          getItem: (key) => stored.get(key) ?? null,
          setItem: (key, value) => void stored.set(key, value)
        },
        performance: { getEntriesByType: () => [{ type: kind }] as unknown as PerformanceEntryList }
      })
      const launch = async (files?: Parameters<Consumer>[0]['files']): Promise<string[]> => {
        consumer(files ? { files } : {})
        await new Promise((done) => setTimeout(done))
        return taken.map(({ name }) => name)
      }
      return { launch, taken }
    }
  }

  it('are handed over, again when they are opened again', async () => {
    const { launch } = tab()('navigate')
    expect(await launch([handle(mine)])).toEqual(['mine.yaml'])
    expect(await launch([handle(mine)])).toEqual(['mine.yaml', 'mine.yaml'])
  })

  it('are not handed over once more by a reload, but when somebody opens them after it', async () => {
    const page = tab()
    await page('navigate').launch([handle(mine)])
    const { launch } = page('reload')
    expect(await launch([handle(mine)])).toEqual([])
    expect(await launch([handle(mine)])).toEqual(['mine.yaml'])
    const other = new File(['x'], 'other.yaml', { lastModified: 1 })
    expect(await page('reload').launch([handle(other)])).toEqual(['other.yaml'])
  })

  it('without a file are a plain start', async () => {
    expect(await tab()('navigate').launch()).toEqual([])
  })

  it('that are gone meanwhile are told of as files that can’t be read', async () => {
    const { launch, taken } = tab()('navigate')
    await launch([{ name: 'gone.yaml', getFile: () => Promise.reject(new DOMException('gone', 'NotFoundError')) }])
    expect(await readTextFile(taken[0] as File)).toMatchObject({ ok: false, say: 'gone.yaml can’t be read.' })
  })

  it('are not asked for where the browser knows no such thing', () => {
    expect(() => onLaunched(() => {})).not.toThrow()
  })
})
