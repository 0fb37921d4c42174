// A name is taken when it is whole: each letter of it would be another name.
import { useState } from 'preact/hooks'
import { TextField } from '../../parts/field.tsx'

type Props = { label: string; hint?: string; value: string; onName: (name: string) => string | null }

export function NameField({ label, hint, value, onName }: Props): preact.JSX.Element {
  const [typed, setTyped] = useState<string | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const take = (): void => {
    if (typed === null || typed.trim() === value) return
    const problem = typed.trim() === '' ? 'A name is missing.' : onName(typed.trim())
    setRefused(problem)
    if (problem === null) setTyped(null)
  }
  return (
    <TextField
      label={label}
      hint={hint}
      problem={refused}
      value={typed ?? value}
      onInput={setTyped}
      onDone={take}
      required
    />
  )
}
