import type { Day } from '@/lib/core/day'
import { DUST_EVENT_KINDS, type DustEvent, type Reading, type System } from '@/lib/core/household'
import { BILL_UNITS, typedBill, typedDay, typedPastDay, typedQuantity } from '../quantities'
import { Answers, known, one, type Read, type Typed } from './answers'

export const MOST_EVENTS = 30

/** Dusty times, a row each: `event-0`, `event-0-from`, `event-0-to`. A row without a kind is none. */
export function readEvents(typed: Typed): Read<DustEvent[]> {
  const answers = new Answers(typed)
  const events: DustEvent[] = []
  for (let row = 0; row < MOST_EVENTS; row++) {
    const word = answers.text(`event-${row}`)
    if (word === '' || word === 'none') continue
    const kind = answers.choice(`event-${row}`, DUST_EVENT_KINDS, 'Choose what makes the dust, or “none”.')
    const from = answers.take(`event-${row}-from`, typedDay)
    const to = answers.take(`event-${row}-to`, typedDay)
    if (from && to && to < from) answers.fault(`event-${row}-to`, `It cannot end before it begins (${from}).`)
    else if (kind && from && to) events.push({ kind, from, to })
  }
  return answers.result(() => events)
}

export function eventsTyped(events: readonly DustEvent[]): Typed {
  return Object.fromEntries(
    events.flatMap(({ kind, from, to }, row) => [
      [`event-${row}`, [kind]],
      [`event-${row}-from`, [from]],
      [`event-${row}-to`, [to]],
    ]),
  )
}

export const READING_KINDS = ['thermostat', 'hour-meter', 'bill'] as const

/** Measured hours or a bill, for one system between two past days. */
export function readReading(typed: Typed, systems: readonly System[], on: Day): Read<Reading> {
  const answers = new Answers(typed)
  const system =
    systems.find(({ id }) => id === answers.text('system')) ?? (systems.length === 1 ? systems[0] : undefined)
  if (!system) answers.fault('system', 'Choose the system that was measured.')
  const source = answers.choice('source', READING_KINDS, 'Choose where the figures come from.')
  const from = answers.take('from', typedDay)
  const to = answers.take('to', typedPastDay(on))
  if (from && to && to < from) answers.fault('to', `It cannot end before it begins (${from}).`)
  if (source === 'bill') {
    const unit = BILL_UNITS.find((word) => word === answers.text('unit'))
    if (!unit) answers.fault('unit', 'Choose the unit that the bill counts in.')
    const amount = answers.take('amount', typedQuantity({ min: 0, max: 1_000_000, unit: 'as the bill counts' }))
    const base = answers.maybe('base', typedQuantity({ min: 0, max: 1_000_000, unit: 'as the bill counts' }))
    if (system && system.heat?.inputBtuh === undefined) {
      answers.fault(
        'system',
        `A bill needs the input rating of ${system.name}: enter it from the rating plate first, under Details.`,
      )
    }
    return answers.result(() => {
      const therms = (count: number) => typedBill.parse({ amount: String(count), unit: known(unit) })
      return {
        system: known(system).id,
        from: known(from),
        to: known(to),
        source,
        therms: therms(known(amount)),
        baseTherms: therms(base ?? 0),
      }
    })
  }
  const hours = (field: string) => answers.quantity(field, { min: 0, max: 1_000_000, unit: 'hours' })
  const [heatHours, coolHours, fanHours] = [hours('heat-hours'), hours('cool-hours'), hours('fan-hours')]
  if (['heat-hours', 'cool-hours', 'fan-hours'].every((field) => answers.text(field) === '')) {
    answers.fault('heat-hours', 'Write the hours of heating, cooling or fan, whichever was measured.')
  }
  return answers.result(() => ({
    system: known(system).id,
    from: known(from),
    to: known(to),
    source: known(source),
    ...(heatHours !== undefined && { heatHours }),
    ...(coolHours !== undefined && { coolHours }),
    ...(fanHours !== undefined && { fanHours }),
  }))
}

export function readingTyped(systems: readonly System[]): Typed {
  return { system: one(systems[0]?.id), source: ['thermostat'], unit: ['therm'] }
}
