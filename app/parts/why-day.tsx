import { mediumRow } from '@/lib/core/air-path'
import type { Day } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import { dustFactors } from '@/lib/core/dust'
import { sizeInWords } from '@/lib/core/filter-words'
import type { Household } from '@/lib/core/household'
import type { Effect, Item, Workings } from '@/lib/core/plan-types'
import type { Mark, Tables } from '@/lib/core/tables'
import {
  airflowInWords,
  hoursInWords,
  numberInWords,
  percentInWords,
  pressureInWords,
  roughly,
  velocityInWords,
} from '@/lib/core/unit-words'
import { basisInWords } from '@/lib/core/words'
import { EffectList } from './effect-list'
import { MarkNote } from './mark-note'

interface WhyDayProps {
  household: Household
  item: Item
  workings: Workings
  effects: Effect[]
  on: Day
  tables: Tables
}

/** How one filter's day came about, in the order a person would reckon it. */
export function WhyDay({ household, item, workings, effects, on, tables }: WhyDayProps) {
  const { figures } = tables
  const { units } = household
  const filter = household.filters.find(({ id }) => id === item.subject)
  if (!filter) throw new Error(`no filter ${item.subject} in ${household.id}`)
  const medium = mediumRow(filter, tables)
  const start = household.systems.find(({ id }) => id === filter.system)?.dustStart
  const factors = dustFactors(household, tables)
  return (
    <div className="why">
      <p className="why-answer">
        <strong>{dayInWords(item.due, on)}</strong>. What set the day: {basisInWords(item.basis)}.
        {workings.loadedFraction !== null && ` ${fullness(workings.loadedFraction)}`}
      </p>
      {item.early && item.late && <Spread early={item.early} late={item.late} on={on} />}

      <h2>What your home’s facts do to the day</h2>
      <EffectList effects={effects} on={on} />

      <h2>How it is reckoned</h2>
      <div className="ledger">
        <dl>
          <Row
            say="Heating runs, in a usual year"
            value={hoursInWords(workings.heatHours)}
            from={figures.heatAdjustment}
          />
          <Row
            say="Cooling runs, in a usual year"
            value={hoursInWords(workings.coolHours)}
            from={figures.coolOversize}
          />
          <Row
            say="The blower runs, in a usual year"
            value={hoursInWords(workings.fanHours)}
            from={figures.heatingBlowerFactor}
          />
          {workings.airflowCfm !== null && (
            <Row
              say="Air through this filter while it runs"
              value={airflowInWords(workings.airflowCfm, units)}
              from={figures.cfmPerTon}
            />
          )}
          {workings.faceVelocityFpm !== null && (
            <Row
              say="Speed of the air at its face"
              value={velocityInWords(workings.faceVelocityFpm, units)}
              from={{ mark: 'C', source: 'the line above over the filter’s face' }}
            />
          )}
        </dl>
        {workings.capacityGrams !== null && (
          <dl>
            <Row
              say="Dust in the air of a reference home"
              value={`${numberInWords(figures.dustMicrogramsPerM3.value)} µg/m³`}
              from={figures.dustMicrogramsPerM3}
            />
            {factors.map(({ name, say, factor, mark }) => (
              <Row key={name} say={say} value={`× ${numberInWords(factor, 2)}`} from={{ mark }} isStep />
            ))}
            <Row
              say="Dust in the air of your home"
              value={`${numberInWords(workings.dustMicrogramsPerM3)} µg/m³`}
              isSum
            />
          </dl>
        )}
        {medium.loading && workings.capacityGrams !== null && workings.arrestance !== null && (
          <dl>
            <Row
              say="Share of the dust that it catches"
              value={percentInWords(workings.arrestance)}
              from={medium.loading}
            />
            {workings.loadedFraction !== null && (
              <Row
                say="Dust caught since the last change"
                value={`${roughly(workings.loadedFraction * workings.capacityGrams)} g`}
                from={{ mark: 'C', source: 'the lines above, day by day' }}
              />
            )}
            <Row
              say={`What a filter of ${sizeInWords(filter.nominal)} holds`}
              value={`${roughly(workings.capacityGrams)} g`}
              from={medium.loading}
            />
            {workings.pressureDropCleanInWg !== null && (
              <Row
                say="What it takes, clean, to press the air through"
                value={pressureInWords(workings.pressureDropCleanInWg, units)}
                from={medium.loading}
              />
            )}
            {workings.theta && start && (
              <Row
                say={`Where your home’s dust starts, told by ${plural(start.systems, 'other system')} of the same owner`}
                value={`× ${numberInWords(start.median, 2)}`}
                from={figures.poolShares}
              />
            )}
            {workings.theta && (
              <Row
                say="Your home’s own dust, learned from looks"
                value={`× ${numberInWords(workings.theta.q50, 2)}`}
                from={figures.thetaSigma}
              />
            )}
          </dl>
        )}
        <dl>
          {filter.labelLimitDays === undefined ? (
            <Row
              say="Never longer in place than"
              value={plural(medium.calendarLimitDays, 'day')}
              from={{ mark: medium.calendarMark, source: medium.calendarSource }}
            />
          ) : (
            <Row say="Never longer than its label says" value={plural(filter.labelLimitDays, 'day')} />
          )}
        </dl>
      </div>
      <p className="hint">
        “Our own choice” is a figure that nobody publishes: we chose it, and the tables of the model say why. “From
        memory” means the source is known by name but was not read again.
      </p>
    </div>
  )
}

function fullness(share: number): string {
  return share >= 1 ? 'By our reckoning it is full already.' : `Today it is about ${percentInWords(share)} full.`
}

function Spread({ early, late, on }: { early: Day; late: Day; on: Day }) {
  if (early === late) return <p>It is that day even if your home is dustier or cleaner than we reckon.</p>
  return (
    <p>
      If your home is dustier than we reckon, it could be as early as {dayInWords(early, on)}; if it is cleaner, as late
      as {dayInWords(late, on)}. A look at the filter narrows that down.
    </p>
  )
}

interface RowProps {
  say: string
  value: string
  from?: { mark: Mark; source?: string | undefined }
  isStep?: boolean
  isSum?: boolean
}

function Row({ say, value, from, isStep, isSum }: RowProps) {
  return (
    <div className={isSum ? 'sum' : isStep ? 'step' : undefined}>
      <dt>
        {say}
        {from && <MarkNote mark={from.mark} source={from.source} />}
      </dt>
      <dd>{value}</dd>
    </div>
  )
}
