'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { ErrorSummary } from '@/app/parts/error-summary'
import { LightChoice } from '@/app/parts/light-choice'
import { TextField } from '@/app/parts/text-field'
import { NOT_SENT } from '@/lib/core/answer'
import type { Day } from '@/lib/core/day'
import { mediumInWords } from '@/lib/core/filter-words'
import { type LogRecord, MEDIA } from '@/lib/core/household'
import { subjectOfRecord, taskOfRecord } from '@/lib/core/log-words'
import { correctEntry } from '../../actions'

interface CorrectFormProps {
  household: string
  entry: string
  record: LogRecord
  today: Day
}

/** An entry of the log, to be said again rightly. */
export function CorrectForm({ household, entry, record, today }: CorrectFormProps) {
  const [{ faults, typed }, correct, isSending] = useActionState(correctEntry, NOT_SENT)
  const fault = (field: string) => faults.find(({ path }) => path === field)?.say
  const was = fieldsOf(record)
  const value = (field: string) => typed[field]?.[0] ?? was[field]
  return (
    <form action={correct}>
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="entry" value={entry} />
      <input type="hidden" name="task" value={taskOfRecord(record)} />
      <input type="hidden" name="subject" value={subjectOfRecord(record)} />
      <TextField
        id="on"
        type="date"
        label="The day"
        defaultValue={value('on')}
        max={today}
        required
        fault={fault('on')}
      />
      {record.kind !== 'service-done' && (
        <LightChoice
          of={record.kind === 'filter-looked' ? 'fitted' : 'old'}
          chosen={value('light')}
          fault={fault('light')}
        />
      )}
      {record.kind === 'filter-changed' && (
        <>
          <div className="field">
            <label className="label" htmlFor="medium">
              What went in
            </label>
            <select id="medium" name="medium" defaultValue={value('medium') ?? ''}>
              <option value="">Not written down</option>
              {MEDIA.filter((medium) => medium !== 'screen').map((medium) => (
                <option key={medium} value={medium}>
                  {mediumInWords(medium)}
                </option>
              ))}
            </select>
          </div>
          <TextField
            id="merv"
            label="Its MERV rating, if it is printed on it"
            inputMode="numeric"
            className="short"
            defaultValue={value('merv')}
            fault={fault('merv')}
          />
        </>
      )}
      {record.kind === 'service-done' && (
        <ChoiceRows
          name="by"
          legend="Who did it?"
          choices={[
            { value: '', label: 'Not written down' },
            { value: 'resident', label: 'The people of the home' },
            { value: 'technician', label: 'A licensed technician' },
          ]}
          chosen={value('by') ?? ''}
          fault={fault('by')}
        />
      )}
      <div className="buttons">
        <button type="submit" className="main" disabled={isSending}>
          {isSending ? 'Correcting…' : 'Correct it'}
        </button>
        <Link href={`/home/${household}/log`}>Back without correcting</Link>
      </div>
    </form>
  )
}

function fieldsOf(record: LogRecord): Record<string, string | undefined> {
  if (record.kind === 'service-done') return { on: record.on, by: record.by }
  const fitted = record.kind === 'filter-changed' ? record.fitted : undefined
  return { on: record.on, light: record.light, medium: fitted?.medium, merv: fitted?.merv?.toString() }
}
