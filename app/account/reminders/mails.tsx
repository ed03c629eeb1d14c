import { ActionForm } from '@/app/parts/action-form'
import { FormChoice, FormField } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { dateInWords } from '@/lib/core/day-words'
import { localDay } from '@/lib/core/zone'
import type { Sent } from '@/lib/data/outgoing'
import type { ReminderWish } from '@/lib/forms/outbound-forms'
import { confirmAgain, saveWish } from './actions'
import { FormSelect } from './form-select'

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']
const HOURS = Array.from({ length: 24 }, (_, hour) => `${String(hour).padStart(2, '0')}:00`)

interface MailsProps {
  wish: ReminderWish
  address: { email: string; emailVerified: boolean } | null
  missing: string[]
  sent: Sent[]
}

/** Whether, when and how mails go out to one person, and what became of the latest. */
export function Mails({ wish, address, missing, sent }: MailsProps) {
  return (
    <section aria-labelledby="mails">
      <h2 id="mails">By mail</h2>
      {missing.length > 0 && (
        <div className="notice">
          <p>This installation sends no mail yet. Everything else works. For whoever hosts it:</p>
          <ul>
            {missing.map((say) => (
              <li key={say}>{say}</li>
            ))}
          </ul>
        </div>
      )}
      {wish.mail && address && !address.emailVerified && missing.length === 0 && (
        <ActionForm action={confirmAgain} className="notice">
          <p>Nothing is sent before you follow the link of the mail that went to {address.email}.</p>
          <SubmitButton>Send that mail again</SubmitButton>
        </ActionForm>
      )}
      <ActionForm action={saveWish}>
        <FormChoice
          name="mail"
          legend={`Mails to ${address?.email ?? 'you'}`}
          choices={[
            {
              value: 'yes',
              label: 'Send them',
              hint: 'One a week with all that is due or soon is, and a note on the day something becomes overdue.',
            },
            { value: 'no', label: 'Send none' },
          ]}
          chosen={wish.mail ? 'yes' : 'no'}
        />
        <div className="inline">
          <FormSelect
            id="weekday"
            label="On"
            defaultValue={String(wish.weekday)}
            options={WEEKDAYS.map((name, day) => [String(day), name])}
          />
          <FormSelect
            id="hour"
            label="At"
            defaultValue={String(wish.hour)}
            options={HOURS.map((name, hour) => [String(hour), name])}
          />
        </div>
        <FormField
          id="timeZone"
          label="Your time zone"
          hint="Where you are, whatever the zone of the home: America/Chicago, Europe/Paris."
          defaultValue={wish.timeZone}
          spellCheck={false}
          required
        />
        <SubmitButton kind="main">Save</SubmitButton>
      </ActionForm>
      {sent.length > 0 && <Latest sent={sent} timeZone={wish.timeZone} />}
    </section>
  )
}

const KINDS: Record<string, string> = {
  digest: 'The week’s mail',
  overdue: 'A note that something is overdue',
  confirmation: 'The mail that asks whether the address is yours',
}

function Latest({ sent, timeZone }: { sent: Sent[]; timeZone: string }) {
  return (
    <>
      <h3>The latest mails</h3>
      <ul>
        {sent.map(({ id, kind, createdAt, sentAt, failedAt, problem }) => (
          <li key={id}>
            {KINDS[kind] ?? kind}, {dateInWords(localDay(createdAt, timeZone))}:{' '}
            {sentAt ? 'sent.' : failedAt ? 'not sent.' : problem ? 'not sent yet; it is tried again.' : 'on its way.'}
            {problem && <span className="hint"> The mail server said: {problem}</span>}
          </li>
        ))}
      </ul>
    </>
  )
}
