'use client'

import { fieldOf } from '@/app/describe/fields/group'
import { SystemField } from '@/app/describe/fields/system-field'
import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import { TypedForm } from '../typed-form'
import { keepMeter } from './actions'

interface MeterFormProps {
  household: string
  systems: { id: string; name: string }[]
}

/** Stands of a counter, a row each. */
export function MeterForm({ household, systems }: MeterFormProps) {
  return (
    <TypedForm
      household={household}
      action={keepMeter}
      typed={{ system: [systems[0]?.id ?? ''], counter: ['heatHours'] }}
      rows={{ least: 4, most: 60 }}
      rowField="stand"
    >
      {(group, rows) => (
        <>
          <SystemField group={group} systems={systems} />
          <SelectField id="counter" label="What does the meter count?" {...fieldOf(group, 'counter')}>
            <option value="heatHours">hours of heating</option>
            <option value="coolHours">hours of cooling</option>
            <option value="fanHours">every hour that the blower runs</option>
          </SelectField>
          <TextField
            id="most"
            label="The highest it can show"
            hint="Only if it has passed that and begun at 0 again: 99999 for a counter of five digits."
            className="short"
            inputMode="decimal"
            {...fieldOf(group, 'most')}
          />
          <fieldset aria-describedby="stands-hint">
            <legend>What it showed</legend>
            <p className="hint" id="stands-hint">
              A stand counts from its day up to the day before the next. If the meter was replaced or reset: write the
              last stand of the old one with that day, and beside it what the new one began with, mostly 0.
            </p>
            {Array.from({ length: rows }, (_, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the rows are fields by number, and never move
              <div className="inline entry" key={row}>
                <TextField id={`day-${row}`} label={`Day ${row + 1}`} type="date" {...fieldOf(group, `day-${row}`)} />
                <TextField
                  id={`stand-${row}`}
                  label="Stand, hours"
                  inputMode="decimal"
                  className="short"
                  {...fieldOf(group, `stand-${row}`)}
                />
                <TextField
                  id={`new-${row}`}
                  label="A new one began with"
                  inputMode="decimal"
                  className="short"
                  {...fieldOf(group, `new-${row}`)}
                />
              </div>
            ))}
          </fieldset>
        </>
      )}
    </TypedForm>
  )
}
