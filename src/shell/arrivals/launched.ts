// Files that the device's file manager opens with the installed app (File Handling, Launch Handler).

type LaunchParams = { files?: readonly { name: string; getFile(): Promise<File> }[] }
type LaunchQueue = { setConsumer(consumer: (params: LaunchParams) => void): void }

type Page = {
  launchQueue?: LaunchQueue
  sessionStorage: Pick<Storage, 'getItem' | 'setItem'>
  performance: Pick<Performance, 'getEntriesByType'>
}

const KEY = 'strandline launched'

/** Hands over what was opened with the app, also before this was called: the browser keeps it until then. */
export function onLaunched(take: (files: File[]) => void, page: Page = globalThis as unknown as Page): void {
  let reloaded = isReload(page)
  page.launchQueue?.setConsumer(({ files = [] }) => {
    if (files.length === 0) return
    void Promise.all(files.map(fileOf)).then((found) => {
      const mark = found.map(({ name, size, lastModified }) => `${name} ${size} ${lastModified}`).join('\n')
      // Chromium hands over the latest launch once more when the page is reloaded (from memory): nobody opened it anew.
      const again = reloaded && remembered(page) === mark
      reloaded = false
      remember(page, mark)
      if (!again) take(found)
    })
  })
}

/** A file that can't be got any more is handed over as one that can't be read: it is told of, not lost. */
async function fileOf(handle: { name: string; getFile(): Promise<File> }): Promise<File> {
  try {
    return await handle.getFile()
  } catch {
    const gone = new File([], handle.name)
    return Object.assign(gone, { slice: () => ({ arrayBuffer: () => Promise.reject(new Error('gone')) }) })
  }
}

function isReload({ performance }: Page): boolean {
  const [entry] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[]
  return entry?.type === 'reload'
}

function remembered({ sessionStorage }: Page): string | null {
  try {
    return sessionStorage.getItem(KEY)
  } catch {
    return null
  }
}

function remember({ sessionStorage }: Page, mark: string): void {
  try {
    sessionStorage.setItem(KEY, mark)
  } catch {
    // Without it a reload shows the same file once more.
  }
}
