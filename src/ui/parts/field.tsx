// A labelled field with its hint and its problem. What is wrong is said where it is wrong, with what would be right.
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import './field.css'

type Shared = {
  label: string
  hint?: ComponentChildren
  problem?: string | null
  unit?: ComponentChildren
  id?: string
}

type TextFieldProps = Shared & {
  value: string
  onInput: (value: string) => void
  /** The whole value, when the field is left or Enter is pressed. */
  onDone?: () => void
  /** What keyboard a phone shows. */
  kind?: 'text' | 'decimal' | 'numeric' | 'date' | 'datetime'
  lines?: number
  placeholder?: string
  suggestions?: readonly string[]
  required?: boolean
  disabled?: boolean
}

export function TextField(props: TextFieldProps): preact.JSX.Element {
  const own = useId()
  const id = props.id ?? own
  const { hint, problem, suggestions, lines } = props
  const picked = props.kind === 'date' ? 'date' : props.kind === 'datetime' ? 'datetime-local' : null
  const shared = {
    id,
    value: props.value,
    placeholder: props.placeholder,
    required: props.required,
    disabled: props.disabled,
    'aria-invalid': problem ? true : undefined,
    'aria-describedby': `${hint ? `${id}-hint` : ''} ${problem ? `${id}-problem` : ''}`.trim() || undefined,
    onChange: props.onDone,
    onInput: (event: Event) => props.onInput((event.currentTarget as HTMLInputElement).value)
  } as const
  return (
    <Framed {...props} id={id}>
      {lines === undefined ? (
        <input
          type={picked ?? 'text'}
          autocomplete="off"
          inputMode={picked ? undefined : (props.kind ?? 'text')}
          list={suggestions ? `${id}-list` : undefined}
          {...shared}
        />
      ) : (
        <textarea rows={lines} {...shared} />
      )}
      {suggestions ? (
        <datalist id={`${id}-list`}>
          {suggestions.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      ) : null}
    </Framed>
  )
}

type SelectFieldProps = Shared & {
  value: string
  options: readonly { value: string; label: string }[]
  onChange: (value: string) => void
  disabled?: boolean
}

export function SelectField(props: SelectFieldProps): preact.JSX.Element {
  const own = useId()
  const id = props.id ?? own
  const { hint, problem } = props
  return (
    <Framed {...props} id={id}>
      <select
        id={id}
        value={props.value}
        disabled={props.disabled}
        aria-invalid={problem ? true : undefined}
        aria-describedby={`${hint ? `${id}-hint` : ''} ${problem ? `${id}-problem` : ''}`.trim() || undefined}
        onChange={(event) => props.onChange(event.currentTarget.value)}
      >
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Framed>
  )
}

function Framed(props: Shared & { id: string; children: ComponentChildren }): preact.JSX.Element {
  const { id, label, hint, problem, unit, children } = props
  return (
    <div class="field" data-problem={problem ? '' : undefined}>
      <label for={id}>{label}</label>
      <div class="field-box">
        {children}
        {typeof unit === 'string' && unit !== '' ? <span class="field-unit">{unit}</span> : unit}
      </div>
      {hint ? (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {problem ? (
        <p class="field-problem" id={`${id}-problem`} role="alert">
          {problem}
        </p>
      ) : null}
    </div>
  )
}
