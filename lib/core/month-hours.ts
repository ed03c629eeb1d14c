import { yearPlace } from './cycle'
import { addMonths, type Day, type DayNumber, dayNumber, dayText } from './day'
import type { Reading } from './household'
import { type Quantity, quantitiesOf } from './reading-spans'
import type { SystemDays } from './system-days'

/** Hours of one kind in one month, h. */
export interface KindHours {
  /** What the climate alone suggests, for the whole of what is over of the month. */
  modelled: number
  /** Measured, on the days that were. */
  measured: number
  measuredDays: number
  /** What the climate alone suggests on the measured days, to compare with. */
  modelledOnMeasured: number
  /** On the other days: the model, scaled by what was measured. */
  reckoned: number
}

/** One month of a system; of the month that is going on, the days up to `on`. */
export interface MonthHours {
  /** The first of the month. */
  month: Day
  days: number
  heat: KindHours
  cool: KindHours
}

/** A year of hours by month, or two where something was measured before that: measured, reckoned, and the model alone. */
export function monthHours(days: SystemDays, readings: readonly Reading[], on: Day): MonthHours[] {
  const own = readings.filter((reading) => reading.system === days.system.id)
  const first = own.map(({ from }) => from).sort()[0] ?? on
  const thisMonth = `${on.slice(0, 7)}-01`
  const back = first < addMonths(thisMonth, -11) ? 23 : 11
  const isHeat = coveredBy(own, 'heatHours')
  const isCool = coveredBy(own, 'coolHours')
  return Array.from({ length: back + 1 }, (_, i) => {
    const month = addMonths(thisMonth, i - back)
    const from = dayNumber(month)
    const to = Math.min(dayNumber(on), dayNumber(addMonths(month, 1)) - 1)
    return {
      month,
      days: to - from + 1,
      heat: sumOf(days, { from, to }, 'heat', isHeat),
      cool: sumOf(days, { from, to }, 'cool', isCool),
    }
  })
}

function coveredBy(readings: readonly Reading[], quantity: Quantity): (day: DayNumber) => boolean {
  const spans = readings.filter((reading) => quantitiesOf(reading).includes(quantity))
  return (day) => {
    const text = dayText(day)
    return spans.some(({ from, to }) => from <= text && text <= to)
  }
}

function sumOf(
  { profile, hoursOn }: SystemDays,
  { from, to }: { from: DayNumber; to: DayNumber },
  kind: 'heat' | 'cool',
  isMeasured: (day: DayNumber) => boolean,
): KindHours {
  const sum = { modelled: 0, measured: 0, measuredDays: 0, modelledOnMeasured: 0, reckoned: 0 }
  for (let day = from; day <= to; day++) {
    const modelled = profile.load[kind][yearPlace(day)] as number
    sum.modelled += modelled
    const hours = hoursOn(day)[kind]
    if (isMeasured(day)) {
      sum.measured += hours
      sum.measuredDays++
      sum.modelledOnMeasured += modelled
    } else sum.reckoned += hours
  }
  return sum
}
