import type { Day } from '@/lib/core/day'
import { plural } from '@/lib/core/day-words'
import type { FilterStory } from '@/lib/core/filter-story'
import type { SystemStory } from '@/lib/core/home-story'
import type { Household } from '@/lib/core/household'
import { subjectInWords } from '@/lib/core/subject-words'
import type { Tables } from '@/lib/core/tables'
import { numberInWords } from '@/lib/core/unit-words'
import { BeliefChart } from './belief-chart'
import { LoadingChart } from './loading-chart'
import { LookWorthView } from './look-worth-view'
import { MonthsChart } from './months-chart'
import { PastFilters } from './past-filters'

interface SystemStoryProps {
  household: Household
  story: SystemStory
  on: Day
  tables: Tables
}

/** What happened to one system: its hours, its filters one by one, and what was learned of the home's dust. */
export function SystemStoryView({ household, story, on, tables }: SystemStoryProps) {
  const { system, months, steps, filters } = story
  const runs = months.some(({ heat, cool }) => heat.modelled + heat.measured + cool.modelled + cool.measured > 0)
  return (
    <>
      <h2>Hours it ran</h2>
      {runs ? (
        <MonthsChart name={system.name} months={months} />
      ) : (
        <p>No heating or cooling of its own is described here, so there are no hours to show.</p>
      )}
      {filters.length === 0 && (
        <>
          <h2>Its filter</h2>
          <p>No filter is described here. Where there is one, what happens to it stands on this page.</p>
        </>
      )}
      {filters.map((filter) => (
        <FilterSection key={filter.filter} household={household} story={filter} on={on} tables={tables} />
      ))}
      {steps && (
        <section aria-labelledby="dust">
          <h2 id="dust">What the looks taught</h2>
          {system.dustStart && (
            <p>
              Before any look here, it starts from what the looks at {plural(system.dustStart.systems, 'other system')}{' '}
              of its owner told: about {numberInWords(system.dustStart.median, 1)} times the dust reckoned.
            </p>
          )}
          <BeliefChart name={system.name} steps={steps} />
        </section>
      )}
    </>
  )
}

interface FilterSectionProps {
  household: Household
  story: FilterStory
  on: Day
  tables: Tables
}

function FilterSection({ household, story, on, tables }: FilterSectionProps) {
  const name = subjectInWords(household, story.filter)
  const id = `filter-${story.filter}`
  const current = story.stays.find(({ to }) => to === null)
  return (
    <section id={id} aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>The filter: {name}</h2>
      {story.stays.length === 0 && (
        <p>
          No change of it was ever recorded, so nobody knows how full it is. Look at it, change it, and record the day:
          from then on this page shows how it fills.
        </p>
      )}
      {!story.hasModel && (
        <p>
          Its kind is washed by the calendar{current && `, every ${plural(current.limitDays, 'day')}`}: how much dust it
          holds is not reckoned, so there is no loading to draw.
        </p>
      )}
      {story.hasModel && story.stays.length > 0 && (
        <>
          <h3>How full it was</h3>
          <LoadingChart name={name} story={story} on={on} figures={tables.figures} />
        </>
      )}
      {story.stays.length > 0 && (
        <>
          <h3>{story.isWashed ? 'When it was washed' : 'Filters taken out'}</h3>
          <PastFilters name={name} story={story} />
        </>
      )}
      {story.hasModel && (
        <>
          <h3>What a look today would teach</h3>
          <LookWorthView worth={story.worth} on={on} tables={tables} />
        </>
      )}
    </section>
  )
}
