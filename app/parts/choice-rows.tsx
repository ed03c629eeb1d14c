import type { ReactNode } from 'react'

export interface Choice {
  value: string
  label: string
  hint?: string
  drawing?: ReactNode
}

interface ChoiceRowsProps {
  /** Also the id of the first row, so that a fault can lead to it. */
  name: string
  legend: string
  hint?: string
  choices: Choice[]
  chosen?: string | string[] | undefined
  fault?: string | undefined
  /** Several at once: tick boxes instead of radio buttons. */
  several?: boolean
  required?: boolean
}

/** A question with a few answers, each a large row to tap. */
export function ChoiceRows({ name, legend, hint, choices, chosen, fault, several, required }: ChoiceRowsProps) {
  const isChosen = (value: string) => (Array.isArray(chosen) ? chosen.includes(value) : chosen === value)
  const describedBy = [hint && `${name}-hint`, fault && `${name}-fault`].filter(Boolean).join(' ')
  return (
    <fieldset aria-describedby={describedBy || undefined}>
      <legend>{legend}</legend>
      {hint && (
        <p className="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
      {fault && (
        <span className="fault" id={`${name}-fault`}>
          {fault}
        </span>
      )}
      <div className="rows">
        {choices.map((choice, index) => (
          <label key={choice.value} className="row">
            <input
              type={several ? 'checkbox' : 'radio'}
              id={index === 0 ? name : undefined}
              name={name}
              value={choice.value}
              defaultChecked={isChosen(choice.value)}
              required={required && !several}
            />
            <span>
              {choice.label}
              {choice.hint && <span className="hint">{choice.hint}</span>}
            </span>
            {choice.drawing}
          </label>
        ))}
      </div>
    </fieldset>
  )
}
