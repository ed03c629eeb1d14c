import Link from 'next/link'
import { TextField } from '@/app/parts/text-field'
import type { Fault } from '@/lib/core/fault'
import { HORIZONS, type RoundsQuery } from '@/lib/forms/rounds-query'

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']

/** How far ahead, how soon, and when nobody can come: all of it in the address. */
export function CalendarForm({ query, faults }: { query: RoundsQuery; faults: Fault[] }) {
  const fault = (field: string) => faults.find(({ path }) => path === field)?.say
  const isPlain = query.closedText === '' && query.closedWeekdays.length === 0 && query.noticeDays === 0
  return (
    <details className="no-print" open={faults.length > 0 || !isPlain}>
      <summary>How far ahead, and when nobody can come</summary>
      <form action="/rounds">
        {query.building !== null && <input type="hidden" name="building" value={query.building} />}
        <div className="field">
          <label className="label" htmlFor="days">
            Take in what may be done within
          </label>
          <select id="days" name="days" defaultValue={query.openDays}>
            {HORIZONS.map((days) => (
              <option key={days} value={days}>
                {days} days
              </option>
            ))}
          </select>
        </div>
        <TextField
          id="notice"
          label="Days of notice to tenants"
          hint="Your lease or your local law may say how many. No visit is planned sooner."
          inputMode="numeric"
          className="short"
          defaultValue={query.noticeDays}
          fault={fault('notice')}
        />
        <fieldset>
          <legend id="off">No visits on</legend>
          {fault('off') && <span className="fault">{fault('off')}</span>}
          <div className="weekdays">
            {WEEKDAYS.map((name, weekday) => (
              <label key={name} className="row">
                <input
                  type="checkbox"
                  name="off"
                  value={weekday}
                  defaultChecked={query.closedWeekdays.includes(weekday)}
                />
                <span>{name}</span>
              </label>
            ))}
          </div>
        </fieldset>
        <TextField
          id="closed"
          label="Nor on these days"
          hint="Like 2026-12-24 to 2026-12-26, 2027-01-01."
          defaultValue={query.closedText}
          fault={fault('closed')}
        />
        <div className="buttons">
          <button type="submit" className="main">
            Plan again
          </button>
          <Link href="/rounds">Every day, no notice</Link>
        </div>
      </form>
    </details>
  )
}
