import { ChoiceRows } from '@/app/parts/choice-rows'
import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import { choiceOf, fieldOf, type GroupProps } from './group'
import { SystemField } from './system-field'

const UNITS = [
  ['therm', 'therms'],
  ['ccf', 'hundred cubic feet of gas (CCF)'],
  ['ft3', 'cubic feet of gas'],
  ['kwh', 'kilowatt-hours'],
  ['oil-gallon', 'gallons of heating oil'],
  ['propane-gallon', 'gallons of propane'],
]

/** Measured hours, or a bill, between two days. */
export function ReadingFields({ systems, ...group }: GroupProps & { systems: { id: string; name: string }[] }) {
  const number = (id: string, label: string, hint?: string) => (
    <TextField
      id={id}
      label={label}
      {...(hint && { hint })}
      className="short"
      inputMode="decimal"
      {...fieldOf(group, id)}
    />
  )
  return (
    <>
      <SystemField group={group} systems={systems} />
      <div className="inline">
        <TextField id="from" label="From, this day included" type="date" {...fieldOf(group, 'from')} />
        <TextField id="to" label="to, this day included" type="date" {...fieldOf(group, 'to')} />
      </div>
      <ChoiceRows
        name="source"
        legend="Where do the figures come from?"
        choices={[
          { value: 'thermostat', label: 'The thermostat’s report' },
          { value: 'hour-meter', label: 'An hour meter' },
          { value: 'bill', label: 'A bill for gas, oil, propane or electric heat' },
        ]}
        {...choiceOf(group, 'source')}
      />
      <div className="ask-hours">
        <h2>Hours</h2>
        {number('heat-hours', 'Hours of heating', 'Whichever of the three was measured.')}
        {number('cool-hours', 'Hours of cooling')}
        {number('fan-hours', 'Hours the fan ran in all', 'With heating and cooling.')}
      </div>
      <div className="ask-bill">
        <h2>The bill</h2>
        {number('amount', 'The bill’s amount')}
        <SelectField id="unit" label="It counts in" {...fieldOf(group, 'unit')}>
          {UNITS.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </SelectField>
        {number(
          'base',
          'Of that, not for heating',
          'What a summer bill of the same length says: hot water, cooking. Empty is none.',
        )}
      </div>
    </>
  )
}
