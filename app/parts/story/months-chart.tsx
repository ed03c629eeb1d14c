import { scaleLinear } from 'd3-scale'
import { YearHatches } from '@/app/parts/year-hatches'
import type { Day } from '@/lib/core/day'
import { dayParts } from '@/lib/core/day-words'
import type { KindHours, MonthHours } from '@/lib/core/month-hours'
import { hoursInWords } from '@/lib/core/unit-words'
import { ChartFigure, type Drawn, KeyLine } from './chart-figure'
import { MonthsTable } from './months-table'

const LEFT = 46
const TOP = 24
const BOTTOM = 44
const ROOM = 230
/** A year of a few hours shouldn't look like a winter. */
const LEAST_TOP_HOURS = 30
/** No heating was measured in July, and none was expected: there is nothing to compare. */
const LEAST_SHOWN_HOURS = 1

/** Hours by month: measured and reckoned, and what the climate alone suggests; heat up, cold down. */
export function MonthsChart({ name, months }: { name: string; months: MonthHours[] }) {
  const isMeasured = months.some(({ heat, cool }) => heat.measured + cool.measured > 0)
  const title = `Hours by month, ${name}`
  const desc = `${months.length} months of heating hours upwards and cooling hours downwards. ${summary(months)}`
  return (
    <ChartFigure
      title={title}
      desc={desc}
      draw={(width, id) => draw(months, width, id)}
      table={<MonthsTable title={title} months={months} />}
    >
      <p>{summary(months)}</p>
      <ul className="year-key">
        {isMeasured && (
          <KeyLine shape={<rect className="months-heat" x="9" y="2" width="16" height="20" />}>measured</KeyLine>
        )}
        <KeyLine
          shape={
            <>
              <rect className="year-heat" x="9" y="2" width="16" height="20" />
              <path className="year-heat-line" d="M9 12L19 2M9 22L25 6M17 22L25 14" strokeWidth="2" />
            </>
          }
        >
          {isMeasured ? 'reckoned, set right by what was measured' : 'reckoned'}
        </KeyLine>
        {isMeasured && (
          <KeyLine shape={<path className="months-model" d="M2 12H32" />}>what the climate alone suggests</KeyLine>
        )}
      </ul>
    </ChartFigure>
  )
}

/** What it comes to: `Heating ran 62 hours in October where the climate suggests 70.` */
function summary(months: readonly MonthHours[]): string {
  const said = (['heat', 'cool'] as const).flatMap((kind) => {
    const measured = months.map((month) => month[kind]).filter(({ measuredDays }) => measuredDays > 0)
    if (measured.length === 0) return []
    const hours = measured.reduce((sum, each) => sum + each.measured, 0)
    const model = measured.reduce((sum, each) => sum + each.modelledOnMeasured, 0)
    const name = kind === 'heat' ? 'Heating' : 'Cooling'
    return [`${name} was measured at ${hoursInWords(hours)} where the climate alone suggests ${hoursInWords(model)}.`]
  })
  return said.length > 0
    ? said.join(' ')
    : 'Nothing was measured yet: these hours are reckoned from the climate and the equipment.'
}

function draw(months: MonthHours[], width: number, id: string): Drawn {
  const top = (kind: 'heat' | 'cool') =>
    Math.max(0, ...months.map((month) => Math.max(month[kind].measured + month[kind].reckoned, month[kind].modelled)))
  const [heatTop, coolTop] = [top('heat'), top('cool')]
  const scale = scaleLinear()
    .domain([Math.max(heatTop, LEAST_TOP_HOURS), -coolTop])
    .range([TOP, TOP + ROOM])
  const slot = (width - LEFT - 6) / months.length
  const at = (i: number) => LEFT + slot * i
  const ticks = scale.ticks(5).filter((hours) => hours <= heatTop || hours <= LEAST_TOP_HOURS)
  return {
    height: TOP + ROOM + BOTTOM,
    body: (
      <>
        <YearHatches id={id} />
        {ticks.map((hours) => (
          <g key={hours}>
            <line className="year-month" x1={LEFT} x2={width - 6} y1={scale(hours)} y2={scale(hours)} />
            <text className="year-text year-text-soft" x={LEFT - 6} y={scale(hours) + 5} textAnchor="end">
              {Math.abs(hours)}
            </text>
          </g>
        ))}
        {months.map((month, i) => (
          <g key={month.month}>
            <Bar kind="heat" hours={month.heat} x={at(i)} slot={slot} y={scale} pattern={`${id}-heat`} />
            <Bar
              kind="cool"
              hours={month.cool}
              x={at(i)}
              slot={slot}
              y={(hours) => scale(-hours)}
              pattern={`${id}-cool`}
            />
          </g>
        ))}
        <line className="year-axis" x1={LEFT} x2={width - 6} y1={scale(0)} y2={scale(0)} />
        <text className="year-text year-text-soft" x="0" y="14">
          hours a month{heatTop > 0 ? '; heating up' : ''}
          {coolTop > 0 ? `${heatTop > 0 ? ', ' : '; '}cooling down` : ''}
        </text>
        {months.map(({ month }, i) => (
          <MonthName key={month} month={month} x={at(i) + slot / 2} y={TOP + ROOM + 17} slot={slot} isFirst={i === 0} />
        ))}
      </>
    ),
  }
}

interface BarProps {
  kind: 'heat' | 'cool'
  hours: KindHours
  x: number
  slot: number
  /** Where so many hours from the axis lie. */
  y: (hours: number) => number
  pattern: string
}

function Bar({ kind, hours, x, slot, y, pattern }: BarProps) {
  const { measured, reckoned, modelled, measuredDays } = hours
  const [left, width] = [x + slot * 0.18, slot * 0.64]
  const box = (from: number, to: number) => ({
    x: left,
    width,
    y: Math.min(y(from), y(to)),
    height: Math.abs(y(from) - y(to)),
  })
  return (
    <>
      {measured > 0 && <rect className={`months-${kind}`} {...box(0, measured)} />}
      {reckoned > 0 && <rect className={`year-${kind}`} {...box(measured, measured + reckoned)} />}
      {reckoned > 0 && <rect fill={`url(#${pattern})`} {...box(measured, measured + reckoned)} />}
      {measuredDays > 0 && Math.max(modelled, measured) >= LEAST_SHOWN_HOURS && (
        <line className="months-model" x1={x + slot * 0.04} x2={x + slot * 0.96} y1={y(modelled)} y2={y(modelled)} />
      )}
    </>
  )
}

function MonthName({
  month,
  x,
  y,
  slot,
  isFirst,
}: {
  month: Day
  x: number
  y: number
  slot: number
  isFirst: boolean
}) {
  const { month: name, year } = dayParts(month)
  const place = Number(month.slice(5, 7))
  const short = slot >= 42 ? name.slice(0, 3) : slot >= 19 || place % 3 === 1 ? name.slice(0, 1) : ''
  return (
    <text className="year-text year-text-soft" x={x} y={y} textAnchor="middle">
      {short}
      {(place === 1 || (isFirst && place < 11)) && (
        <tspan x={x} dy="18" textAnchor={isFirst ? 'start' : 'middle'}>
          {year}
        </tspan>
      )}
    </text>
  )
}
