import { scaleLinear } from 'd3-scale'
import type { ReactNode } from 'react'
import { addMonths, type Day, dayNumber, dayText } from '@/lib/core/day'
import { dateInWords, dayParts, plural } from '@/lib/core/day-words'
import { type FilterStory, loadOn, type Stay } from '@/lib/core/filter-story'
import type { Figures } from '@/lib/core/tables'
import { percentInWords } from '@/lib/core/unit-words'
import { ChartFigure, type Drawn, KeyLine } from './chart-figure'
import { LIGHT_SEEN, LightSign, MOST, type Scale, Seen, StayShape } from './loading-shapes'
import { LoadingTable } from './loading-table'

interface LoadingChartProps {
  name: string
  story: FilterStory
  on: Day
  figures: Figures
}

const LEFT = 46
const RIGHT = 8
const TOP = 30
const ROOM = 210
const BOTTOM = 44
const MONTHS_BACK = 12

/** How full a filter was and will be: the reckoned middle, the range around it, and what was seen. */
export function LoadingChart({ name, story, on, figures }: LoadingChartProps) {
  const today = dayNumber(on)
  const earliest = dayNumber(addMonths(on, -MONTHS_BACK))
  const stays = story.stays.filter((stay) => stay.points.length > 0 && (stay.to === null || stay.to > earliest))
  const current = stays.find(({ to }) => to === null)
  const title = `How full the filter was, ${name}`
  const now = current && loadOn(current, today)
  const said = now
    ? `Today it is about ${percentInWords(now.middle)} full; the range is ${percentInWords(now.low)} to ${percentInWords(now.high)}.`
    : 'No filter is in place whose change was recorded.'
  const lights = new Set(stays.flatMap(({ looks }) => looks.map(({ light }) => light)))
  return (
    <ChartFigure
      title={title}
      desc={`The load of each filter over time, from empty to full, up to ${dateInWords(dayText(endOf(stays, today)))}. ${said}`}
      draw={(width, id) => draw({ stays, from: earliest, today, figures }, width, id)}
      table={<LoadingTable title={title} stays={stays} on={on} />}
    >
      <p>
        {said} {current && pace(current)} The line is the likeliest course; with a chance of 80 % the truth lies inside
        the band.
      </p>
      <ul className="year-key">
        <KeyLine shape={<path className="load-line" d="M1 20L33 5" />}>reckoned</KeyLine>
        <KeyLine shape={<path className="load-line load-ahead" d="M1 20L33 5" />}>still to come</KeyLine>
        {(['clear', 'half', 'dark'] as const)
          .filter((light) => lights.has(light))
          .map((light) => (
            <KeyLine key={light} shape={<LightSign light={light} x={17} y={12} />}>
              {LIGHT_SEEN[light]}
            </KeyLine>
          ))}
      </ul>
    </ChartFigure>
  )
}

/** How soon it fills, beside the rule: `It is full about 47 days after its change; the longest it may stay is 90 days.` */
function pace({ points, from, limitDays }: Stay): string {
  const full = points.find(({ middle }) => middle >= 1)
  return full
    ? `It is full about ${plural(full.on - from, 'day')} after its change; the longest it may stay is ${plural(limitDays, 'day')}.`
    : `It does not fill before the ${plural(limitDays, 'day')} that it may stay at the longest.`
}

function endOf(stays: readonly Stay[], today: number): number {
  return Math.max(today, ...stays.flatMap(({ points }) => points.slice(-1).map(({ on }) => on)))
}

interface LoadingFacts {
  stays: Stay[]
  from: number
  today: number
  figures: Figures
}

function draw({ stays, from, today, figures }: LoadingFacts, width: number, id: string): Drawn {
  const start = Math.max(from, Math.min(today, ...stays.map((stay) => stay.from)))
  const end = endOf(stays, today) + 3
  const x = scaleLinear([start, end], [LEFT, width - RIGHT])
  const y = scaleLinear([0, MOST], [TOP + ROOM, TOP]).clamp(true)
  return {
    height: TOP + ROOM + BOTTOM,
    body: (
      <>
        <defs>
          <clipPath id={`${id}-room`}>
            <rect x={LEFT} y={TOP - 10} width={width - LEFT - RIGHT} height={ROOM + 10} />
          </clipPath>
        </defs>
        <Levels y={y} width={width} />
        <MonthTicks x={x} start={start} end={end} width={width} />
        <g clipPath={`url(#${id}-room)`}>
          {stays.map((stay) => (
            <StayShape key={stay.from} stay={stay} today={today} x={x} y={y} />
          ))}
        </g>
        {stays.flatMap((stay) =>
          stay.looks
            .filter((look) => look.on >= start)
            .map((look) => (
              <Seen key={`${stay.from} ${look.on}`} light={look.light} at={x(look.on)} y={y} figures={figures} />
            )),
        )}
        <line className="year-today" x1={x(today)} x2={x(today)} y1={TOP - 8} y2={TOP + ROOM} />
        <text
          className="year-text year-text-strong"
          x={x(today)}
          y={14}
          textAnchor={x(today) > width - 60 ? 'end' : x(today) < 80 ? 'start' : 'middle'}
        >
          today
        </text>
        <line className="year-axis" x1={LEFT} x2={width - RIGHT} y1={y(0)} y2={y(0)} />
      </>
    ),
  }
}

function Levels({ y, width }: { y: Scale; width: number }) {
  return (
    <>
      {[0, 0.5, 1].map((load) => (
        <g key={load}>
          <line
            className={load === 1 ? 'load-full' : 'year-month'}
            x1={LEFT}
            x2={width - RIGHT}
            y1={y(load)}
            y2={y(load)}
          />
          <text className="year-text year-text-soft" x={LEFT - 6} y={y(load) + 5} textAnchor="end">
            {load === 0 ? 'clean' : load === 1 ? 'full' : 'half'}
          </text>
        </g>
      ))}
    </>
  )
}

function MonthTicks({ x, start, end, width }: { x: Scale; start: number; end: number; width: number }): ReactNode {
  const months: Day[] = []
  for (let month = `${dayText(start).slice(0, 7)}-01`; dayNumber(month) <= end; month = addMonths(month, 1))
    months.push(month)
  const slot = (width - LEFT - RIGHT) / Math.max(1, months.length)
  const every = slot >= 40 ? 1 : slot >= 20 ? 2 : 3
  return months.map((month, i) => {
    const at = x(dayNumber(month))
    if (at < LEFT) return null
    const { month: name, year } = dayParts(month)
    return (
      <g key={month}>
        <line className="year-month" x1={at} x2={at} y1={TOP + ROOM} y2={TOP + ROOM + 6} />
        {i % every === 0 && at < width - 30 && (
          <text className="year-text year-text-soft" x={at} y={TOP + ROOM + 20}>
            {name.slice(0, 3)}
            {month.slice(5, 7) === '01' && (
              <tspan x={at} dy="18">
                {year}
              </tspan>
            )}
          </text>
        )}
      </g>
    )
  })
}
