'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { LightChoice } from '@/app/parts/light-choice'
import { TextField } from '@/app/parts/text-field'
import { NOT_SENT } from '@/lib/core/answer'
import type { Day } from '@/lib/core/day'
import { mediumInWords, sizeInWords } from '@/lib/core/filter-words'
import { type Filter, MEDIA, type Task } from '@/lib/core/household'
import { recordDone } from '../../../actions'

interface RecordFormProps {
  household: string
  task: Task
  subject: string
  today: Day
  filter: Filter | null
  /** The page to go back to. */
  back: string
}

/** Records one thing done: when, and for a filter how the old one looked and what went in. */
export function RecordForm({ household, task, subject, today, filter, back }: RecordFormProps) {
  const [{ faults, typed }, record, isSending] = useActionState(recordDone, NOT_SENT)
  const fault = (field: string) => faults.find(({ path }) => path === field)?.say
  const isLook = task === 'look-at-filter'
  return (
    <form action={record}>
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="task" value={task} />
      <input type="hidden" name="subject" value={subject} />
      {filter && <LightChoice of={isLook ? 'fitted' : 'old'} chosen={typed.light?.[0]} fault={fault('light')} />}
      <TextField
        id="on"
        type="date"
        label={isLook ? 'When did you look?' : 'When was it done?'}
        defaultValue={typed.on?.[0] ?? today}
        max={today}
        required
        fault={fault('on')}
      />
      {filter && task === 'change-filter' && <Fitted filter={filter} typed={typed} fault={fault('merv')} />}
      <div className="buttons">
        <button type="submit" className="main" disabled={isSending}>
          {isSending ? 'Recording…' : 'Record it'}
        </button>
        <Link href={back}>Back without recording</Link>
      </div>
    </form>
  )
}

function Fitted({
  filter,
  typed,
  fault,
}: {
  filter: Filter
  typed: Record<string, string[]>
  fault: string | undefined
}) {
  return (
    <details open={typed.medium !== undefined && typed.medium[0] !== ''}>
      <summary>
        Another kind went in than {sizeInWords(filter.nominal)}, {mediumInWords(filter.medium, filter.merv)}?
      </summary>
      <div className="field">
        <label className="label" htmlFor="medium">
          What went in
        </label>
        <select id="medium" name="medium" defaultValue={typed.medium?.[0] ?? ''}>
          <option value="">The same as before</option>
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
        defaultValue={typed.merv?.[0]}
        fault={fault}
      />
    </details>
  )
}
