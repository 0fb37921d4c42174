// A name is taken when it is whole: each letter of it would be another name.
import { useState } from 'preact/hooks'
import { TextField } from '../../parts/field.tsx'

type Props = {
  label: string
  hint?: string
  /** What is wrong with the name that stands. */
  problem?: string | null
  value: string
  /** It may be left out: then it may be emptied. */
  optional?: boolean
  onName: (name: string) => string | null
}

export function NameField({ label, hint, problem = null, value, optional = false, onName }: Props): preact.JSX.Element {
  const [typed, setTyped] = useState<string | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const take = (): void => {
    if (typed === null || typed.trim() === value) return
    const why = typed.trim() === '' && !optional ? 'A name is missing.' : onName(typed.trim())
    setRefused(why)
    if (why === null) setTyped(null)
  }
  return (
    <TextField
      label={label}
      hint={hint}
      problem={refused ?? problem}
      value={typed ?? value}
      onInput={setTyped}
      onDone={take}
      required={!optional}
    />
  )
}
