import Link from 'next/link'
import type { ReactNode } from 'react'
import { dayInWords } from '@/lib/core/day-words'
import type { Item } from '@/lib/core/plan-types'
import type { HomeSheet } from '@/lib/core/sheet'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import type { Tables } from '@/lib/core/tables'
import { peopleInWords, taskInWords } from '@/lib/core/words'
import { DueList } from './due-list'
import { WhyDay } from './why-day'
import { YearStrip } from './year-strip'

interface PlanSheetProps {
  sheet: HomeSheet
  tables: Tables
  /** Where what happened to a system is shown, if it is. */
  storyHref?: (system: string) => string
  children?: ReactNode
}

/** A whole home on one page: what is due, its year, and why each filter's day. */
export function PlanSheet({ sheet, tables, storyHref, children }: PlanSheetProps) {
  const { household, on, plan } = sheet
  const anchor = (item: Item) => `why-${household.id}-${item.subject}`
  return (
    <article className="sheet" aria-labelledby={`home-${household.id}`}>
      <h1 id={`home-${household.id}`}>{homeInWords(household)}</h1>
      <p className="lead">
        {peopleInWords(household)}. As of {dayInWords(on)}.
      </p>
      {children}
      <p className="no-print">
        On this page: <a href={`#due-${household.id}`}>what is due</a>
        {sheet.years.length > 0 && (
          <>
            , <a href={`#year-${household.id}`}>the year</a>
          </>
        )}
        {sheet.effects.length > 0 && (
          <>
            , <a href={`#why-${household.id}`}>why each filter’s day</a>
          </>
        )}
      </p>
      <div id={`due-${household.id}`} />
      <DueList
        household={household}
        items={plan.items}
        on={on}
        warnings={plan.warnings}
        looks={new Map(sheet.looks)}
        whyHref={(item) => (isFilterItem(item) ? `#${anchor(item)}` : null)}
      />
      <div id={`year-${household.id}`} />
      {sheet.years.map((year) => (
        <YearStrip key={year.system} household={household} year={year} on={on} workings={plan.workings} />
      ))}
      {storyHref && household.systems.length > 0 && (
        <p className="no-print">
          What happened so far, in pictures:{' '}
          {household.systems.map(({ id, name }, i) => (
            <span key={id}>
              {i > 0 && ', '}
              <Link href={storyHref(id)}>{name}</Link>
            </span>
          ))}
        </p>
      )}
      <div id={`why-${household.id}`} />
      {plan.items.filter(isFilterItem).map((item) => {
        const workings = plan.workings.find(({ filter }) => filter === item.subject)
        const found = sheet.effects.find(({ filter }) => filter === item.subject)
        if (!workings || !found) return null
        return (
          <section key={item.subject} id={anchor(item)} className="why-section">
            <h2>
              Why this day? {taskInWords(item.task)}, {subjectInWords(household, item.subject)}
            </h2>
            <WhyDay
              household={household}
              item={item}
              workings={workings}
              effects={found.effects}
              on={on}
              tables={tables}
            />
          </section>
        )
      })}
    </article>
  )
}

/** Whether an item is about a filter, whose day has workings to show. */
export function isFilterItem({ task }: Item): boolean {
  return task === 'change-filter' || task === 'wash-filter'
}
