import type { ReactNode } from 'react'

interface SelectFieldProps {
  id: string
  label: string
  hint?: string
  fault?: string | undefined
  defaultValue?: string | undefined
  onChange?: (value: string) => void
  children: ReactNode
}

/** One of a longer list; its `name` is its id. */
export function SelectField({ id, label, hint, fault, defaultValue, onChange, children }: SelectFieldProps) {
  const describedBy = [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ')
  return (
    <div className="field">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      {hint && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault}
        </span>
      )}
      <select
        id={id}
        name={id}
        defaultValue={defaultValue}
        aria-describedby={describedBy || undefined}
        aria-invalid={fault ? true : undefined}
        onChange={onChange && ((event) => onChange(event.target.value))}
      >
        {children}
      </select>
    </div>
  )
}
