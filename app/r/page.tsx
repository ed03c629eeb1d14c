import Link from 'next/link'
import { DueList } from '@/app/parts/due-list'
import { OfItem } from '@/app/parts/of-what'
import { isFilterItem } from '@/app/parts/plan-sheet'
import { WhyDay } from '@/app/parts/why-day'
import { tables } from '@/content/tables'
import { dayInWords } from '@/lib/core/day-words'
import { effects } from '@/lib/core/effects'
import type { Item } from '@/lib/core/plan-types'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { Did } from '../home/[household]/did'
import { type RentedHome, rentedPage } from './rented-page'
import { RenterNav } from './renter-nav'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata = { title: 'Due' }

export default rentedPage(async (home, { searchParams }: Props) => {
  const { did, entry } = await searchParams
  const { stored, on, plan } = home
  const { household } = stored
  const items = plan.items.filter((item) => !isOff(home, item))
  return (
    <>
      <RenterNav id={stored.id} home={household} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>{homeInWords(household)}</h1>
        <p className="lead">{dayInWords(on)}. You are here by a renter’s link: it shows this home and nothing else.</p>
        <Did id={stored.id} did={did} entry={entry} />
        <DueList
          household={household}
          items={items}
          on={on}
          whyHref={(item) => (isFilterItem(item) ? `#why-${item.subject}` : null)}
          actions={(item) => {
            if (isFilterItem(item)) return <FilterActions home={home} item={item} />
            return item.state === 'later' ? null : <Tell home={home} item={item} />
          }}
        />
        {items.filter(isFilterItem).map((item) => (
          <Why key={item.subject} home={home} item={item} />
        ))}
      </main>
    </>
  )
})

function isOff({ stored, on }: RentedHome, item: Item): boolean {
  return stored.putOffs.some((p) => p.task === item.task && p.subject === item.subject && p.until > on)
}

function FilterActions({ home: { stored }, item }: { home: RentedHome; item: Item }) {
  const ofWhat = <OfItem household={stored.household} item={item} />
  const subject = encodeURIComponent(item.subject)
  return (
    <>
      <Link className="button main" href={`/r/record/${item.task}/${subject}`}>
        {item.task === 'wash-filter' ? 'I washed it' : 'I changed it'}
        {ofWhat}
      </Link>
      <Link className="button" href={`/r/record/look-at-filter/${subject}`}>
        I looked at it
        {ofWhat}
      </Link>
      <Link className="button quiet" href={`/find?home=${stored.id}`} prefetch={false}>
        Where is it?
      </Link>
    </>
  )
}

function Tell({ home: { stored }, item }: { home: RentedHome; item: Item }) {
  return (
    <Link className="button" href={`/r/write?about=${item.task}`}>
      Write to the landlord
      <OfItem household={stored.household} item={item} />
    </Link>
  )
}

function Why({ home: { stored, on, plan }, item }: { home: RentedHome; item: Item }) {
  const workings = plan.workings.find(({ filter }) => filter === item.subject)
  if (!workings) return null
  const { household } = stored
  return (
    <details>
      <summary>
        Why this day? {taskInWords(item.task)}, {subjectInWords(household, item.subject)}
      </summary>
      {/* Inside: a browser opens what a link leads into. */}
      <div id={`why-${item.subject}`}>
        <WhyDay
          household={household}
          item={item}
          workings={workings}
          effects={effects(household, item.subject, tables, on)}
          on={on}
          tables={tables}
        />
      </div>
    </details>
  )
}
