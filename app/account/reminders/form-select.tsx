'use client'

import { useAnswer } from '@/app/parts/action-form'

interface FormSelectProps {
  id: string
  label: string
  defaultValue: string
  options: [string, string][]
}

/** A choice among many in an `ActionForm`, the chosen one kept. */
export function FormSelect({ id, label, defaultValue, options }: FormSelectProps) {
  const { typed, faults } = useAnswer().answer
  const fault = faults.find(({ path }) => path === id)?.say
  const value = typed[id]?.[0] ?? defaultValue
  return (
    <div className="field">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault}
        </span>
      )}
      {/* A new answer makes it anew: a browser's own reset would bring back what was chosen at first. */}
      <select key={value} id={id} name={id} defaultValue={value} aria-describedby={fault ? `${id}-fault` : undefined}>
        {options.map(([option, name]) => (
          <option key={option} value={option}>
            {name}
          </option>
        ))}
      </select>
    </div>
  )
}
