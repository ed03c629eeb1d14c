import type { InputHTMLAttributes } from 'react'

interface TextFieldProps extends InputHTMLAttributes<HTMLInputElement> {
  id: string
  label: string
  /** Why it is asked, what it looks like, what to do if unknown. */
  hint?: string
  fault?: string | undefined
}

/** One line to type in, with its label, hint and fault. Its `name` is its id unless given. */
export function TextField({ id, label, hint, fault, name = id, ...input }: TextFieldProps) {
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
      <input
        {...input}
        id={id}
        name={name}
        aria-describedby={describedBy || undefined}
        aria-invalid={fault ? true : undefined}
      />
    </div>
  )
}
