// Files dropped on the page. Unheeded, a browser leaves the page for what was dropped, whatever is on the stove.

/** Marks the page while files are held over it, and hands over those that are dropped. Returns the way to end it. */
export function onDropped(take: (files: File[]) => void, page: Document = document): () => void {
  const mark = (on: boolean): void => {
    page.documentElement.toggleAttribute('data-drop', on)
  }
  const over = (event: DragEvent): void => {
    if (!hasFiles(event)) return
    event.preventDefault()
    if (event.dataTransfer) event.dataTransfer.dropEffect = 'copy'
    mark(true)
  }
  const leave = (event: DragEvent): void => {
    if (event.relatedTarget === null) mark(false)
  }
  const drop = (event: DragEvent): void => {
    mark(false)
    if (!hasFiles(event)) return
    event.preventDefault()
    const files = [...(event.dataTransfer?.files ?? [])]
    if (files.length > 0) take(files)
  }
  page.addEventListener('dragover', over)
  page.addEventListener('dragleave', leave)
  page.addEventListener('drop', drop)
  return () => {
    page.removeEventListener('dragover', over)
    page.removeEventListener('dragleave', leave)
    page.removeEventListener('drop', drop)
  }
}

function hasFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') ?? false
}
