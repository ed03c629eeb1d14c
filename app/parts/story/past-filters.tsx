import { scaleLinear } from 'd3-scale'
import { dayText } from '@/lib/core/day'
import { dateInWords, plural, shortDate } from '@/lib/core/day-words'
import type { FilterStory, Stay } from '@/lib/core/filter-story'
import { hoursInWords, percentInWords } from '@/lib/core/unit-words'
import { lightInWords } from '@/lib/core/words'
import { TableBox } from '../table-box'
import { ChartFigure, type Drawn, KeyLine } from './chart-figure'
import { LightSign } from './loading-shapes'

const ROW = 52
const TOP = 26
const MOST = 1.5
/** More would be a list, and that is what the table is for. */
const SHOWN = 8

/** The condition of the filters that were taken out: how long they stayed, how full they were, what the light said. */
export function PastFilters({ name, story }: { name: string; story: FilterStory }) {
  const past = story.stays.filter(({ to }) => to !== null).reverse()
  if (past.length === 0) {
    return story.isWashed ? (
      <p>
        No washing came after another in the last two years that we know of. The next one will stand here, with how long
        it was since the one before.
      </p>
    ) : (
      <p>
        No filter was taken out of here in the last two years that we know of. The next change will stand here, with how
        long it stayed and how full it was.
      </p>
    )
  }
  const title = `${story.isWashed ? 'Washings' : 'Filters taken out'}, ${name}`
  const table = <PastTable title={title} past={past} isWashed={story.isWashed} />
  if (!story.hasModel) return <TableBox name={title}>{table}</TableBox>
  return (
    <ChartFigure
      title={title}
      desc={`${story.isWashed ? plural(past.length, 'washing') : `${plural(past.length, 'filter')} taken out`}, each as a bar from empty to full: ${past.slice(0, SHOWN).map(inWords).join('; ')}.`}
      draw={(width) => draw(past.slice(0, SHOWN), width)}
      table={table}
    >
      <p>
        How full {story.isWashed ? 'it was each time' : 'each was when it came out'}, by what is known of this home
        today; the thin line is the range.
      </p>
      <ul className="year-key">
        <KeyLine shape={<rect className="past-bar" x="1" y="6" width="32" height="12" />}>reckoned load</KeyLine>
        {past.some(({ lightAtRemoval }) => lightAtRemoval) && (
          <KeyLine shape={<LightSign light="half" x={17} y={12} />}>what the light said, open to filled</KeyLine>
        )}
      </ul>
    </ChartFigure>
  )
}

function inWords(stay: Stay): string {
  const load = stay.points.at(-1)
  const full = load ? `, about ${percentInWords(load.middle)} full` : ''
  const seen = stay.lightAtRemoval ? `, ${lightInWords(stay.lightAtRemoval).toLowerCase()}` : ''
  return `${plural((stay.to ?? stay.from) - stay.from, 'day')} up to ${dateInWords(dayText(stay.to ?? stay.from))}${full}${seen}`
}

function draw(past: Stay[], width: number): Drawn {
  const x = scaleLinear([0, MOST], [2, width - 30]).clamp(true)
  return {
    height: TOP + past.length * ROW,
    body: (
      <>
        <text className="year-text year-text-soft" x={x(1)} y="14" textAnchor="middle">
          full
        </text>
        <line className="load-full" x1={x(1)} x2={x(1)} y1={TOP - 6} y2={TOP + past.length * ROW} />
        {past.map((stay, i) => (
          <Row key={stay.from} stay={stay} top={TOP + i * ROW} x={x} width={width} />
        ))}
      </>
    ),
  }
}

function Row({ stay, top, x, width }: { stay: Stay; top: number; x: (load: number) => number; width: number }) {
  const load = stay.points.at(-1)
  const to = stay.to ?? stay.from
  const middle = top + 33
  return (
    <>
      <text className="year-text" x="2" y={top + 15}>
        {shortDate(dayText(stay.from))} to {shortDate(dayText(to))} {dayText(to).slice(0, 4)}:{' '}
        {plural(to - stay.from, 'day')}
      </text>
      {load && (
        <>
          <rect className="past-bar" x={x(0)} y={middle - 7} width={x(load.middle) - x(0)} height="14" />
          <line className="past-range" x1={x(load.low)} x2={x(load.high)} y1={middle} y2={middle} />
        </>
      )}
      {stay.lightAtRemoval && <LightSign light={stay.lightAtRemoval} x={width - 12} y={middle} />}
    </>
  )
}

function PastTable({ title, past, isWashed }: { title: string; past: Stay[]; isWashed: boolean }) {
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">{isWashed ? 'Washed' : 'Taken out'}</th>
          <th scope="col" className="number">
            In place
          </th>
          <th scope="col" className="number">
            Blower ran
          </th>
          <th scope="col" className="number">
            Full
          </th>
          <th scope="col">Light</th>
          <th scope="col">Kind</th>
        </tr>
      </thead>
      <tbody>
        {past.map((stay) => {
          const load = stay.points.at(-1)
          return (
            <tr key={stay.from}>
              <th scope="row">{dateInWords(dayText(stay.to ?? stay.from))}</th>
              <td className="number">{plural((stay.to ?? stay.from) - stay.from, 'day')}</td>
              <td className="number">{hoursInWords(stay.blowerHours)}</td>
              <td className="number">
                {load
                  ? `${percentInWords(load.middle)} (${percentInWords(load.low)} to ${percentInWords(load.high)})`
                  : 'not reckoned'}
              </td>
              <td>{stay.lightAtRemoval ? lightInWords(stay.lightAtRemoval) : 'not recorded'}</td>
              <td>{stay.kind}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
