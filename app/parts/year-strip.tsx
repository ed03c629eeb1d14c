import { useId } from 'react'
import type { Day } from '@/lib/core/day'
import { dateInWords, shortDate } from '@/lib/core/day-words'
import type { Household } from '@/lib/core/household'
import type { SystemYear, Workings } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import { percentInWords } from '@/lib/core/unit-words'
import { YearDrawingSvg } from './year-drawing'
import { YearKey } from './year-key'
import { layLying } from './year-lying'
import { yearMarks } from './year-marks'
import { layRunning } from './year-running'
import { YearTable } from './year-table'

interface YearStripProps {
  household: Household
  year: SystemYear
  on: Day
  /** For how full each filter is today. */
  workings: Workings[]
}

/** One system's year: lying on a desk and on paper, running down on a phone, and the same as a table. */
export function YearStrip({ household, year, on, workings }: YearStripProps) {
  const id = useId()
  const fractionOf = (filter: string) => workings.find((each) => each.filter === filter)?.loadedFraction ?? null
  const names = (subject: string) => subjectInWords(household, subject)
  const marks = yearMarks({ year, on, names, loaded: fractionOf })
  const todayWords = `today, ${shortDate(on)}`
  const title = `The year of ${year.name}`
  const full = year.filters.flatMap(({ filter }) => {
    const share = fractionOf(filter)
    return share === null
      ? []
      : [`The filter (${names(filter)}) is ${share >= 1 ? 'full' : `about ${percentInWords(share)} full`} today.`]
  })
  const desc = `From ${dateInWords(year.from)}: hours of heating and cooling a day through the year, ${year.filters.length === 0 ? 'no filter' : 'filter changes done and expected'}, and the times for a service. The table below says the same.`
  return (
    <figure className="year" aria-label={title}>
      <YearDrawingSvg
        drawing={layLying(marks, todayWords)}
        id={`${id}-lying`}
        title={title}
        desc={desc}
        shape="lying"
      />
      <YearDrawingSvg
        drawing={layRunning(marks, todayWords)}
        id={`${id}-running`}
        title={title}
        desc={desc}
        shape="running"
      />
      <figcaption>
        <p>
          {marks.heatTop > 0 || marks.coolTop > 0
            ? 'The filled shapes are hours a day that the equipment runs, week by week.'
            : 'This equipment moves no hours that we know of.'}{' '}
          {full.join(' ')}
        </p>
        <YearKey marks={marks} />
      </figcaption>
      <YearTable year={year} names={names} on={on} />
    </figure>
  )
}
