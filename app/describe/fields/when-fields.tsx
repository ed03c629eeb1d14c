import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import { fieldOf, type GroupProps } from './group'

interface WhenFieldsProps extends GroupProps {
  name: string
  legend: string
  hint: string
  /** The unit that stands there first. */
  unit: 'weeks' | 'months'
}

/** About how long ago, or on which day; both empty means that nobody knows. */
export function WhenFields({ name, legend, hint, unit, ...group }: WhenFieldsProps) {
  const unitField = fieldOf(group, `${name}-unit`)
  return (
    <fieldset aria-describedby={`${name}-hint`}>
      <legend>{legend}</legend>
      <p className="hint" id={`${name}-hint`}>
        {hint}
      </p>
      <div className="inline">
        <TextField
          id={`${name}-ago`}
          label="About so long ago"
          className="short"
          inputMode="numeric"
          {...fieldOf(group, `${name}-ago`)}
        />
        <SelectField id={`${name}-unit`} label="counted in" defaultValue={unitField.defaultValue || unit}>
          <option value="days">days</option>
          <option value="weeks">weeks</option>
          <option value="months">months</option>
          <option value="years">years</option>
        </SelectField>
        <TextField id={`${name}-day`} label="or on this day" type="date" {...fieldOf(group, `${name}-day`)} />
      </div>
    </fieldset>
  )
}
