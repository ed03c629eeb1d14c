import Link from 'next/link'
import type { ReactNode } from 'react'
import { type Day, daysBetween } from '@/lib/core/day'
import { awayInWords, durationInWords } from '@/lib/core/day-words'
import { lookInWords, whoInWords } from '@/lib/core/due-words'
import { arrowInWords, mediumInWords, sizeInWords } from '@/lib/core/filter-words'
import type { Household } from '@/lib/core/household'
import type { LookWorth } from '@/lib/core/look-worth'
import type { Item } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { worthInWords } from '@/lib/core/worth-words'
import { DayBlock } from './day-block'
import { OfItem } from './of-what'

interface DueItemProps {
  household: Household
  item: Item
  on: Day
  whyHref: string | null
  /** What a look would teach, today or on the look day to come, where that is known. */
  look?: LookWorth | undefined
  children?: ReactNode
}

/** One thing to do: its day, what exactly and where, who, why, when a look is enough, and its buttons. */
export function DueItem({ household, item, on, whyHref, look, children }: DueItemProps) {
  const filter = household.filters.find(({ id }) => id === item.subject)
  const isOverdue = item.state === 'overdue'
  return (
    <article className={isOverdue ? 'due-item overdue' : 'due-item'}>
      <div className="due-day">
        <DayBlock day={item.due} on={on} />
        <p className="due-away">{isOverdue ? late(item, on) : awayInWords(item.due, on)}</p>
      </div>
      <div className="due-body">
        <h3>
          {taskInWords(item.task)}
          <span className="due-where">
            , {filter ? `in the ${subjectInWords(household, item.subject)}` : subjectInWords(household, item.subject)}
          </span>
        </h3>
        {filter && (
          <p className="due-what">
            <strong>{sizeInWords(filter.nominal)}</strong>, {mediumInWords(filter.medium, filter.merv)}
            {arrowInWords(filter.place) && `; ${arrowInWords(filter.place)}`}.
          </p>
        )}
        <p className="due-who">{whoInWords(item, on)}</p>
        {item.reasons.length > 0 && <p className="due-why">{item.reasons.map(({ say }) => say).join(' ')}</p>}
        {item.lookOn && item.lookOn < item.due && filter?.medium !== 'screen' && (
          <p className="due-look">
            {lookInWords(item.lookOn, on, look && !look.isWorthIt)}
            {look && ` ${worthInWords(look, item.lookOn <= on ? 'today' : 'then')}`}
          </p>
        )}
        {children && <div className="due-actions">{children}</div>}
        {whyHref && (
          <p className="due-more">
            <Link href={whyHref}>
              Why this day?
              <OfItem household={household} item={item} />
            </Link>
          </p>
        )}
      </div>
    </article>
  )
}

function late({ due }: Item, on: Day): string {
  return `${durationInWords(daysBetween(due, on))} overdue`
}
