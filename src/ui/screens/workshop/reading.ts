// The rows and problems of a text that is being written, a moment behind the typing so that it never waits for them.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { type Outline, outlineOf } from '../../../core/protocol/edit/rows.ts'
import { type Read, reader } from './reader.ts'

/** After the last letter, and at the latest after the first one that was not looked at. */
const PAUSE_MS = 120
const LATEST_MS = 250

export type Reading = {
  read: Read
  /** Looks at the text as it stands, now: what moves rows is drawn together with the rows it moved. */
  readNow(text: string): Outline
}

export function useReading(text: string): Reading {
  const [read, setRead] = useState((): Read => ({ text, outline: outlineOf(text) }))
  const reading = useMemo(() => reader(), [])
  const latest = useRef(text)
  const behindSince = useRef<number | null>(null)
  latest.current = text
  const readNow = (now: string): Outline => {
    if (now === read.text) return read.outline
    const next = { text: now, outline: outlineOf(now) }
    setRead(next)
    return next.outline
  }
  useEffect(() => () => reading.close(), [reading])
  useEffect(() => {
    if (text === read.text) {
      behindSince.current = null
      return
    }
    behindSince.current ??= performance.now()
    const left = LATEST_MS - (performance.now() - behindSince.current)
    const look = (): void => {
      behindSince.current = null
      // What a worker says of a text that was read anew since is old.
      reading.read(text, (done) => setRead((was) => (was.text === latest.current ? was : done)))
    }
    const timer = setTimeout(look, Math.max(0, Math.min(PAUSE_MS, left)))
    return () => clearTimeout(timer)
  }, [text])
  return { read, readNow }
}
