/** A file piece by piece, as the disk hands it over. */
export async function* piecesOf(file: Blob): AsyncGenerator<Uint8Array> {
  const reader = file.stream().getReader()
  try {
    for (let read = await reader.read(); !read.done; read = await reader.read()) yield read.value
  } finally {
    // Whoever stops reading early lets the file go.
    await reader.cancel().catch(() => {})
  }
}
