// The way to choose one file.
import type { ComponentChildren } from 'preact'
import './file-field.css'

type Props = {
  label: string
  accept?: string
  take: (file: File) => void | Promise<void>
  children?: ComponentChildren
}

export function FileField({ label, accept, take, children }: Props): preact.JSX.Element {
  return (
    <label class="file-field">
      <span>{label}</span>
      <input
        type="file"
        accept={accept}
        onChange={(event) => {
          const input = event.currentTarget
          const file = input.files?.[0]
          // Emptied, so that the same file can be chosen again once it is mended.
          if (file) void Promise.resolve(take(file)).finally(() => (input.value = ''))
        }}
      />
      {children}
    </label>
  )
}
