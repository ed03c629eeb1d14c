import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { addYears } from '@/lib/core/day'
import { dayInWords } from '@/lib/core/day-words'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { taskDoneInWords } from '@/lib/core/words'
import { type LogEntry, listLog } from '@/lib/data/log'
import { listMessages, type Message } from '@/lib/data/messages'
import { listRenterLinks, type RenterLink } from '@/lib/data/renter-links'
import { momentInWords } from '../../../moment-in-words'
import { HomeNav } from '../home-nav'
import { type LoadedHome, loadHome } from '../load'
import { OneButton } from '../one-button'
import { readMessage, takeLinkBack } from './actions'
import { LinkForm } from './link-form'

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const generateMetadata = homeTitle('Renters')

export default databasePage(async ({ params, searchParams }: Props) => {
  const { household: id } = await params
  const { did } = await searchParams
  const home = await loadHome(id, `/home/${id}/renters`)
  const { viewer, stored, on } = home
  const links = await listRenterLinks(viewer, id)
  const messages = await listMessages(viewer, id)
  const entries = await listLog(viewer, id, { door: 'link' })
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Details" />
      <main id="main" tabIndex={-1}>
        <h1>Renters of {homeInWords(stored.household)}</h1>
        <p className="lead">
          A renter’s link opens this home without an account: what is due, finding and changing the filter, photos,
          Check and writing to you. It never shows your other homes, contacts, notes or who has an account.
        </p>
        {did === 'revoked' && (
          <p className="notice" role="status">
            Taken back. It opens nothing from now on.
          </p>
        )}
        {may(stored.role, 'manage') && <Messages home={home} messages={messages} />}
        <Links home={home} links={links} />
        {stored.role === 'owner' && stored.state === 'open' && (
          <section aria-labelledby="new-link">
            <h2 id="new-link">A new link</h2>
            <LinkForm household={id} today={on} until={addYears(on, 1)} />
          </section>
        )}
        <Doings home={home} entries={entries} />
      </main>
    </>
  )
})

function Links({ home: { stored, on }, links }: { home: LoadedHome; links: RenterLink[] }) {
  if (stored.role !== 'owner') return null
  return (
    <section aria-labelledby="links">
      <h2 id="links">Links</h2>
      {links.length === 0 && <p>None yet.</p>}
      <ul className="plain-list">
        {links.map(({ id, name, createdName, createdAt, lastDay, revokedAt }) => {
          const isOver = lastDay < on
          return (
            <li key={id}>
              <p>
                <strong>{name}</strong>:{' '}
                {revokedAt
                  ? `taken back ${momentInWords(revokedAt, stored.household.timeZone)}`
                  : `${isOver ? 'ended' : 'until'} ${dayInWords(lastDay, on)}`}
                . Made by {createdName}, {momentInWords(createdAt, stored.household.timeZone)}.
              </p>
              {!revokedAt && !isOver && (
                <OneButton action={takeLinkBack} fields={{ household: stored.id, link: id }}>
                  Take it back from {name}
                </OneButton>
              )}
            </li>
          )
        })}
      </ul>
    </section>
  )
}

function Messages({ home: { stored }, messages }: { home: LoadedHome; messages: Message[] }) {
  const { timeZone } = stored.household
  return (
    <section aria-labelledby="messages">
      <h2 id="messages">What they wrote</h2>
      {messages.length === 0 && <p>Nothing yet.</p>}
      <ul className="plain-list">
        {messages.map(({ id, text, byName, at, door, readAt }) => (
          <li key={id}>
            <p className="as-typed">{text}</p>
            <p className="hint">
              {byName}, {door === 'link' ? 'by the link' : 'signed in'}, {momentInWords(at, timeZone)}
              {readAt && `; read ${momentInWords(readAt, timeZone)}`}
            </p>
            {!readAt && (
              <OneButton action={readMessage} fields={{ household: stored.id, message: id }}>
                I have read it
              </OneButton>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

function Doings({ home: { stored, on }, entries }: { home: LoadedHome; entries: LogEntry[] }) {
  const { household } = stored
  return (
    <section aria-labelledby="doings">
      <h2 id="doings">What they recorded</h2>
      {entries.length === 0 && <p>Nothing yet.</p>}
      <ul className="plain-list">
        {entries.map(({ id, record, by, at, undone, standing }) => (
          <li key={id}>
            <p>
              <strong>{doneInWords(record)}</strong>,{' '}
              {subjectInWords(household, record.kind === 'service-done' ? record.subject : record.filter)}:{' '}
              {dayInWords(record.on, on)}.
            </p>
            <p className="hint">
              {by.name}, recorded {momentInWords(at, household.timeZone)}
              {undone ? `; taken back by ${undone.by}` : standing ? '' : '; corrected since'}
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}

function doneInWords(record: LogEntry['record']): string {
  if (record.kind === 'service-done') return taskDoneInWords(record.task)
  return taskDoneInWords(record.kind === 'filter-looked' ? 'look-at-filter' : 'change-filter')
}
