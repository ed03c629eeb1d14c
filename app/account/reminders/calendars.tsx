import { ActionForm } from '@/app/parts/action-form'
import { FormChoice } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { dateInWords } from '@/lib/core/day-words'
import type { Feed } from '@/lib/data/feeds'
import type { Home } from '@/lib/data/households'
import { endMyFeed, makeFeed, renewMyFeed } from './actions'

// More would be a page of rows to tap; a landlord's calendar holds all homes.
const SCOPES = 12

/** The private calendar addresses of an account. */
export function Calendars({ feeds, homes }: { feeds: Feed[]; homes: Home[] }) {
  const scopes = homes.length > 1 && homes.length <= SCOPES
  return (
    <section aria-labelledby="calendars">
      <h2 id="calendars">In your calendar</h2>
      <ActionForm action={makeFeed}>
        <p>
          A private address for any calendar program that subscribes to calendars. Each thing due is a whole-day event
          with a reminder; when you change a filter, its event moves.
        </p>
        {scopes && (
          <FormChoice
            name="scope"
            legend="For which homes?"
            choices={[
              { value: '', label: 'All my homes' },
              ...homes.map(({ id, name }) => ({ value: id, label: `${name} only` })),
            ]}
            chosen=""
          />
        )}
        <SubmitButton kind={feeds.length === 0 ? 'main' : undefined}>
          {feeds.length === 0 ? 'Make a calendar address' : 'Make another address'}
        </SubmitButton>
      </ActionForm>
      <ul className="plain-list">
        {feeds.map((feed) => (
          <li key={feed.id}>
            <h3>{feed.householdName ?? 'All my homes'}</h3>
            <p>
              Made on {dateInWords(feed.createdAt.slice(0, 10))}.{' '}
              {feed.fetchedOn
                ? `Last read by a calendar on ${dateInWords(feed.fetchedOn)}.`
                : 'Not read by a calendar yet.'}
            </p>
            <ActionForm action={renewMyFeed} hidden={{ feed: feed.id }}>
              <SubmitButton>Give it a new address</SubmitButton>
            </ActionForm>
            <ActionForm action={endMyFeed} hidden={{ feed: feed.id }}>
              <SubmitButton kind="quiet">End this address</SubmitButton>
            </ActionForm>
          </li>
        ))}
      </ul>
    </section>
  )
}
