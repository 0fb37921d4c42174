// A table on paper: its head stands again on each page, no row is cut in two, and what is left out of it is counted.
import type { ComponentChildren } from 'preact'
import { condensed, cutWords, leftWords, type Room } from '../../../../core/record/condensed.ts'
import type { SaidLine } from '../record-words.ts'
import { When } from '../tables.tsx'

type RowsProps<T> = {
  title: string
  /** What the rows are, in the plural: "and 14 more readings". */
  what: string
  heads: readonly string[]
  all: readonly T[]
  room: Room
  /** `dense`: many short rows. `amounts`: what each is of stands beside its name. */
  look?: 'dense' | 'amounts'
  row: (one: T, index: number) => ComponentChildren
}

export function Rows<T>({ title, what, heads, all, room, look, row }: RowsProps<T>): preact.JSX.Element | null {
  if (all.length === 0) return null
  const { head, left, tail } = condensed(all, room)
  return (
    <section>
      <h3>{title}</h3>
      <table class={look ? `print-${look}` : undefined}>
        <Heads names={heads} />
        <tbody>
          {head.map(row)}
          {left > 0 ? (
            <tr>
              <td class="print-left" colSpan={heads.length}>
                {leftWords(left, what)}
              </td>
            </tr>
          ) : null}
          {tail.map((one, i) => row(one, head.length + left + i))}
        </tbody>
      </table>
    </section>
  )
}

export function Heads({ names }: { names: readonly string[] }): preact.JSX.Element {
  return (
    <thead>
      <tr>
        {names.map((name) => (
          <th key={name} scope="col">
            {name}
          </th>
        ))}
      </tr>
    </thead>
  )
}

type SaidRowsProps = { title: string; what: string; lines: readonly SaidLine[]; room: Room }

export function SaidRows({ title, what, lines, room }: SaidRowsProps): preact.JSX.Element {
  return (
    <Rows
      title={title}
      what={what}
      heads={['When', 'What']}
      all={lines}
      room={room}
      row={({ said, words }, i) => (
        <tr key={`${said.entry.writerId} ${said.entry.seq} ${i}`}>
          <td class="print-narrow">
            <When said={said} />
          </td>
          <td>{cutWords(words, room)}</td>
        </tr>
      )}
    />
  )
}
