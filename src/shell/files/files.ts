/** Hands a text to the dyer as a file. */
export function saveTextFile(name: string, mime: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: mime }))
  const link = document.createElement('a')
  link.href = url
  link.download = safeName(name)
  link.click()
  // The download has to have begun before the address goes away.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

/** A file name that every system takes: what the dyer called the batch may hold any sign. */
export function safeName(name: string): string {
  const safe = [...name].map((sign) => (sign < ' ' || '\\/:*?"<>|'.includes(sign) ? '-' : sign)).join('')
  return safe.trim().slice(0, 120) || 'strandline'
}
