// The rows and problems of a text that is being written: with the letter that was typed where reading is quick, else as
// soon as a worker has read it.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Outline } from '../../../core/protocol/edit/rows.ts'
import { type Read, reader, readTimed } from './reader.ts'

export type Reading = {
  read: Read
  /** Looks at a text that is typed. */
  look(text: string): void
  /** Looks at the text as it stands, now: what moves rows is drawn together with the rows it moved. */
  readNow(text: string): Outline
}

export function useReading(text: string): Reading {
  const [read, setRead] = useState((): Read => readTimed(text))
  const reading = useMemo(() => reader(), [])
  const latest = useRef(text)
  const shown = useRef(read)
  useEffect(() => () => reading.close(), [reading])
  const show = (next: Read): void => {
    shown.current = next
    setRead(next)
  }
  return {
    read,
    look(now) {
      latest.current = now
      // What a worker says of a text that was read anew since is old.
      const told = (done: Read): void => {
        if (shown.current.text !== latest.current) show(done)
      }
      const done = reading.read(now, told)
      if (done) show(done)
    },
    readNow(now) {
      latest.current = now
      if (now !== shown.current.text) show(readTimed(now))
      return shown.current.outline
    }
  }
}
