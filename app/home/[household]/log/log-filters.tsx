import Link from 'next/link'
import { TextField } from '@/app/parts/text-field'
import { doorInWords, LOG_KINDS, logKindInWords } from '@/lib/core/log-words'
import { DOORS } from '@/lib/core/viewer'
import type { LogQuery } from '@/lib/forms/log-filter'
import type { LogChoices } from './load-log'

/** What of the log is shown: a plain form whose answer is the page's address. */
export function LogFilters({ id, query, choices }: { id: string; query: LogQuery; choices: LogChoices }) {
  const isAsked = Object.keys(query).length > 0
  return (
    <details className="log-filters no-print" open={isAsked}>
      <summary>Show only some of it</summary>
      <form action={`/home/${id}/log`} method="get">
        <div className="log-fields">
          <Choice
            id="kind"
            label="What"
            chosen={query.kind}
            options={LOG_KINDS.map((kind) => [kind, logKindInWords(kind)])}
          />
          <Choice
            id="subject"
            label="Which"
            chosen={query.subject}
            options={choices.subjects.map(({ id, name }) => [id, name])}
          />
          <Choice
            id="who"
            label="Recorded by"
            chosen={query.who}
            options={choices.people.map((name) => [name, name])}
          />
          <Choice id="door" label="How" chosen={query.door} options={DOORS.map((door) => [door, doorInWords(door)])} />
          <TextField id="from" type="date" label="From" defaultValue={query.from} />
          <TextField id="to" type="date" label="To" defaultValue={query.to} />
        </div>
        <div className="buttons">
          <button type="submit">Show</button>
          {isAsked && <Link href={`/home/${id}/log`}>Show everything</Link>}
        </div>
      </form>
    </details>
  )
}

interface ChoiceProps {
  id: string
  label: string
  chosen: string | undefined
  options: (readonly [string, string])[]
}

function Choice({ id, label, chosen, options }: ChoiceProps) {
  return (
    <div className="field">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <select id={id} name={id} defaultValue={chosen ?? ''}>
        <option value="">Everything</option>
        {options.map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
    </div>
  )
}
