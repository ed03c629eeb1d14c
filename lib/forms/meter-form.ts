import { addDays, compareDays, type Day, daysBetween } from '@/lib/core/day'
import type { Reading, System } from '@/lib/core/household'
import { QUANTITIES } from '@/lib/core/reading-spans'
import { chosenSystem } from './chosen-system'
import { Answers, known, type Read, type Typed } from './describe/answers'
import { typedPastDay, typedQuantity } from './quantities'

export const MOST_STANDS = 60
const HOURS = { min: 0, max: 1_000_000, unit: 'hours on the counter' }

interface Stand {
  row: number
  on: Day
  stand: number
  /** Where a new or reset counter began on that day. */
  next: number | undefined
}

/**
 * What stands of a counter say, a row each: `day-0`, `stand-0`, `new-0`. A stand is read some time in its day: the hours up to
 * the next count from that day to the day before the next.
 */
export function readMeter(typed: Typed, systems: readonly System[], on: Day): Read<Reading[]> {
  const answers = new Answers(typed)
  const system = chosenSystem(answers, systems, 'Choose the system that the meter counts for.')
  const quantity = answers.choice('counter', QUANTITIES, 'Choose what the counter counts.')
  const most = answers.maybe('most', typedQuantity(HOURS))
  const stands = standsIn(answers, on)
  const hours = stands.slice(1).map((stand, i) => hoursBetween(stands[i] as Stand, stand, { most, answers }))
  return answers.result(() =>
    hours.map((count, i) => ({
      system: known(system).id,
      from: (stands[i] as Stand).on,
      to: addDays((stands[i + 1] as Stand).on, -1),
      source: 'hour-meter',
      [known(quantity)]: count,
    })),
  )
}

function standsIn(answers: Answers, on: Day): Stand[] {
  const stands: Stand[] = []
  for (let row = 0; row < MOST_STANDS; row++) {
    if (['day', 'stand', 'new'].every((field) => answers.text(`${field}-${row}`) === '')) continue
    const day = answers.take(`day-${row}`, typedPastDay(on))
    const stand = answers.take(`stand-${row}`, typedQuantity(HOURS))
    const next = answers.maybe(`new-${row}`, typedQuantity(HOURS))
    if (day !== undefined && stand !== undefined) stands.push({ row, on: day, stand, next })
  }
  stands.sort((a, b) => compareDays(a.on, b.on))
  stands.forEach((stand, i) => {
    if (stands[i - 1]?.on === stand.on)
      answers.fault(
        `day-${stand.row}`,
        `There are two stands of ${stand.on}. Keep one; for a new counter use its own field.`,
      )
  })
  if (stands.length < 2 && answers.faults.length === 0)
    answers.fault('day-0', 'Write two stands at least, with their days: the hours are what lies between them.')
  return stands
}

function hoursBetween(
  before: Stand,
  after: Stand,
  { most, answers }: { most: number | undefined; answers: Answers },
): number {
  const begin = before.next ?? before.stand
  const days = daysBetween(before.on, after.on)
  let hours = after.stand - begin
  // A counter that has shown all its digits begins anew at 0: one more than the highest it can show.
  if (hours < 0 && most !== undefined && most >= begin) hours = most + 1 - begin + after.stand
  if (hours < 0)
    answers.fault(
      `stand-${after.row}`,
      `${after.stand} on ${after.on} is less than ${begin} on ${before.on}. Was the counter replaced or reset in between? Then write its last stand with the day, and beside it what the new one began with. Did it pass its highest figure? Then write that above.`,
    )
  else if (days > 0 && hours > 24 * days)
    answers.fault(
      `stand-${after.row}`,
      `${Math.round(hours)} hours from ${before.on} to ${after.on} are more than the ${24 * days} that these days have. Look at both stands.`,
    )
  return hours
}
