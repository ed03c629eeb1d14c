'use client'

import { fieldOf } from '@/app/describe/fields/group'
import { SystemField } from '@/app/describe/fields/system-field'
import { TextField } from '@/app/parts/text-field'
import { TypedForm } from '../typed-form'
import { keepHours } from './actions'

interface HoursFormProps {
  household: string
  systems: { id: string; name: string }[]
}

const SHOWN = [
  ['heatHours', 'Heating'],
  ['coolHours', 'Cooling'],
  ['fanHours', 'Fan in all'],
] as const

/** Hours of some days, a row each. */
export function HoursForm({ household, systems }: HoursFormProps) {
  return (
    <TypedForm
      household={household}
      action={keepHours}
      typed={{ system: [systems[0]?.id ?? ''] }}
      rows={{ least: 3, most: 40 }}
      rowField="from"
    >
      {(group, rows) => (
        <>
          <SystemField group={group} systems={systems} />
          <fieldset aria-describedby="hours-hint">
            <legend>What it shows, in hours</legend>
            <p className="hint" id="hours-hint">
              Both days included. Leave empty what it does not show; 0 says that it did not run. Where it shows hours of
              the fan, they are those with heating and cooling together.
            </p>
            {Array.from({ length: rows }, (_, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the rows are fields by number, and never move
              <div className="entry" key={row}>
                <div className="inline">
                  <TextField
                    id={`from-${row}`}
                    label={`Days ${row + 1}, from`}
                    type="date"
                    {...fieldOf(group, `from-${row}`)}
                  />
                  <TextField id={`to-${row}`} label="to" type="date" {...fieldOf(group, `to-${row}`)} />
                </div>
                <div className="inline">
                  {SHOWN.map(([quantity, label]) => (
                    <TextField
                      key={quantity}
                      id={`${quantity}-${row}`}
                      label={label}
                      inputMode="decimal"
                      className="short"
                      {...fieldOf(group, `${quantity}-${row}`)}
                    />
                  ))}
                </div>
              </div>
            ))}
          </fieldset>
        </>
      )}
    </TypedForm>
  )
}
