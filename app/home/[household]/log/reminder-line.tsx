import { dayInWords } from '@/lib/core/day-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import type { StoredHousehold } from '@/lib/data/households'
import type { Reminder } from './load-log'

/** One reminder: to whom, how, and of what. */
export function ReminderLine({ stored, reminder }: { stored: StoredHousehold; reminder: Reminder }) {
  return (
    <li className="log-line">
      <p className="log-day">{dayInWords(reminder.on)}</p>
      <h2>
        Reminded
        <span className="due-where">
          , {reminder.name}, {reminder.channel === 'mail' ? 'by mail' : 'by a notice in the browser'}
        </span>
      </h2>
      <p>
        {reminder.items
          .map(({ task, subject }) => `${taskInWords(task)}: ${subjectInWords(stored.household, subject)}`)
          .join('. ')}
        .
      </p>
    </li>
  )
}
