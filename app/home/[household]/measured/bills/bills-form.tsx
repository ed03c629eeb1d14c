'use client'

import { fieldOf } from '@/app/describe/fields/group'
import { SystemField } from '@/app/describe/fields/system-field'
import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import type { Units } from '@/lib/core/unit-words'
import { TypedForm } from '../typed-form'
import { keepBills } from './actions'

interface BillsFormProps {
  household: string
  systems: { id: string; name: string }[]
  /** What a bill may count in, with the words. */
  counts: [string, string][]
  units: Units
}

// Of gas by volume: US Energy Information Administration, 1,036 Btu a cubic foot, in either unit.
const CONTENT: Record<Units, { label: string; usual: string }> = {
  us: { label: 'Heat in a cubic foot of gas, Btu', usual: '1,036' },
  metric: { label: 'Heat in a cubic metre of gas, MJ', usual: '38.6' },
}

/** Bills, a row each. */
export function BillsForm({ household, systems, counts, units }: BillsFormProps) {
  const content = CONTENT[units]
  return (
    <TypedForm
      household={household}
      action={keepBills}
      typed={{ system: [systems[0]?.id ?? ''], unit: [counts[0]?.[0] ?? ''] }}
      rows={{ least: 4, most: 40 }}
      rowField="amount"
    >
      {(group, rows) => (
        <>
          <SystemField group={group} systems={systems} />
          <SelectField id="unit" label="The bills count in" {...fieldOf(group, 'unit')}>
            {counts.map(([value, label]) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </SelectField>
          {counts.some(([unit]) => unit === 'ccf') && (
            <TextField
              id="content"
              label={content.label}
              hint={`For gas by volume, if the bill says it. Empty is ${content.usual}, the average of the United States.`}
              className="short"
              inputMode="decimal"
              {...fieldOf(group, 'content')}
            />
          )}
          <fieldset aria-describedby="bills-hint">
            <legend>The bills</legend>
            <p className="hint" id="bills-hint">
              Both days included. For oil and propane that is delivered: from one filling to the day before the next,
              and what the next one took. Add summer bills too: they tell what hot water and cooking take.
            </p>
            {Array.from({ length: rows }, (_, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the rows are fields by number, and never move
              <div className="inline entry" key={row}>
                <TextField
                  id={`from-${row}`}
                  label={`Bill ${row + 1}, from`}
                  type="date"
                  {...fieldOf(group, `from-${row}`)}
                />
                <TextField id={`to-${row}`} label="to" type="date" {...fieldOf(group, `to-${row}`)} />
                <TextField
                  id={`amount-${row}`}
                  label="Amount"
                  inputMode="decimal"
                  className="short"
                  {...fieldOf(group, `amount-${row}`)}
                />
                <TextField
                  id={`base-${row}`}
                  label="Not for heating"
                  inputMode="decimal"
                  className="short"
                  {...fieldOf(group, `base-${row}`)}
                />
              </div>
            ))}
          </fieldset>
          <p className="hint">“Not for heating” may stay empty: it is then found from the summer bills, and shown.</p>
        </>
      )}
    </TypedForm>
  )
}
