import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { DueList } from '@/app/parts/due-list'
import { OfItem } from '@/app/parts/of-what'
import { isFilterItem } from '@/app/parts/plan-sheet'
import { tables } from '@/content/tables'
import { dayInWords } from '@/lib/core/day-words'
import { looksWorth } from '@/lib/core/home-story'
import type { Item } from '@/lib/core/plan-types'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { peopleInWords, taskInWords } from '@/lib/core/words'
import type { StoredHousehold } from '@/lib/data/households'
import { bringBack } from './actions'
import { Did } from './did'
import { HomeNav } from './home-nav'
import { type LoadedHome, loadHome } from './load'
import { OneButton } from './one-button'

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const generateMetadata = homeTitle('Due')

async function Page({ params, searchParams }: Props) {
  const { household: id } = await params
  const { did, entry } = await searchParams
  const home = await loadHome(id, `/home/${id}`)
  const { stored, on, plan } = home
  const { household } = stored
  const isOff = (item: Item) => putOffOf(stored, item, on) !== undefined
  const due = stored.state === 'closed' ? [] : plan.items.filter((item) => !isOff(item))
  return (
    <>
      <HomeNav id={id} home={household} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>{homeInWords(household)}</h1>
        <p className="lead">
          {peopleInWords(household)}. {dayInWords(on)}.
        </p>
        <Did id={id} did={did} entry={entry} />
        {stored.state === 'closed' && (
          <p className="notice">
            This home is closed: it can be read, and nothing falls due. Whoever owns it can open it again under Details.
          </p>
        )}
        {stored.state === 'open' && (
          <DueList
            household={household}
            items={due}
            on={on}
            warnings={plan.warnings}
            looks={looksWorth(household, tables, on, plan.items)}
            whyHref={(item) => (isFilterItem(item) ? `/home/${id}/why/${item.subject}` : null)}
            actions={may(stored.role, 'record') ? (item) => <ItemActions home={home} item={item} /> : undefined}
          />
        )}
        <PutOffs home={home} items={plan.items.filter(isOff)} />
        {stored.state === 'open' && (
          <p className="no-print">
            <Link href={`/home/${id}/away`}>Nobody at home for a while?</Link>{' '}
            <Link href="/account/reminders">How you are reminded</Link>
          </p>
        )}
      </main>
    </>
  )
}

function putOffOf(stored: StoredHousehold, item: Item, on: string) {
  return stored.putOffs.find((p) => p.task === item.task && p.subject === item.subject && p.until > on)
}

function ItemActions({ home: { stored, on }, item }: { home: LoadedHome; item: Item }) {
  const { id, household } = stored
  const ofWhat = <OfItem household={household} item={item} />
  const path = `${item.task}/${encodeURIComponent(item.subject)}`
  const isSoon = item.earliest <= on || item.state !== 'later'
  return (
    <>
      <Link className={isSoon ? 'button main' : 'button'} href={`/home/${id}/record/${path}`}>
        {item.task === 'change-filter' ? 'I changed it' : item.task === 'wash-filter' ? 'I washed it' : 'It is done'}
        {ofWhat}
      </Link>
      {isFilterItem(item) && (
        <Link className="button" href={`/home/${id}/record/look-at-filter/${encodeURIComponent(item.subject)}`}>
          I looked at it
          {ofWhat}
        </Link>
      )}
      {item.state !== 'later' && (
        <Link className="button quiet" href={`/home/${id}/put-off/${path}`}>
          Put off
          {ofWhat}
        </Link>
      )}
    </>
  )
}

function PutOffs({ home: { stored, on }, items }: { home: LoadedHome; items: Item[] }) {
  if (items.length === 0 || stored.state === 'closed') return null
  return (
    <section aria-labelledby="put-off">
      <h2 id="put-off">Put off</h2>
      <ul className="plain-list">
        {items.map((item) => {
          const off = putOffOf(stored, item, on)
          return (
            <li key={`${item.task} ${item.subject}`}>
              <p>
                <strong>{taskInWords(item.task)}</strong>, {subjectInWords(stored.household, item.subject)}: until{' '}
                {off && dayInWords(off.until, on)}, put off by {off?.byName}.
              </p>
              <OneButton action={bringBack} fields={{ household: stored.id, task: item.task, subject: item.subject }}>
                Bring it back
              </OneButton>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

export default databasePage(Page)
