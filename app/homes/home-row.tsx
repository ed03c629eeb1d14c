import Link from 'next/link'
import type { Day } from '@/lib/core/day'
import { awayInWords } from '@/lib/core/day-words'
import type { HouseholdPlan, Item } from '@/lib/core/plan-types'
import { stateInWords, taskInWords } from '@/lib/core/words'
import type { Home } from '@/lib/data/households'
import { mostPressing } from './most-pressing'

/** One home in a list: its name, and the one thing there that presses most. */
export function HomeRow({ home, plan, on }: { home: Home; plan: HouseholdPlan; on: Day }) {
  const first = mostPressing(plan.items)
  return (
    <li>
      <Link href={`/home/${home.id}`} prefetch={false}>
        {home.name}
      </Link>
      {home.building && <span className="home-building">{home.building}</span>}
      <span className="home-first">
        {home.state === 'closed'
          ? 'Closed: kept to be read, nothing is due.'
          : first
            ? words(first, on)
            : 'Nothing is due.'}
      </span>
    </li>
  )
}

function words(item: Item, on: Day) {
  return (
    <>
      <strong>{stateInWords(item.state)}:</strong> {lowerFirst(taskInWords(item.task))}, {awayInWords(item.due, on)}
    </>
  )
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}
