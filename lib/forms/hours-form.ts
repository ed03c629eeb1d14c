import { type Day, daysBetween } from '@/lib/core/day'
import type { Reading, System } from '@/lib/core/household'
import { clashingReadings, QUANTITIES } from '@/lib/core/reading-spans'
import { chosenSystem } from './chosen-system'
import { Answers, known, type Read, type Typed } from './describe/answers'
import { typedMeantDay, typedPastDay, typedQuantity } from './quantities'

export const MOST_SPANS = 40

/**
 * Hours that a thermostat shows of some days, a row each: `from-0`, `to-0`, and whichever it shows of `heatHours-0`,
 * `coolHours-0`, `fanHours-0`. All faults at once.
 */
export function readHours(typed: Typed, systems: readonly System[], on: Day): Read<Reading[]> {
  const answers = new Answers(typed)
  const system = chosenSystem(answers, systems, 'Choose the system that the thermostat is for.')
  const readings: Reading[] = []
  for (let row = 0; row < MOST_SPANS; row++) {
    const shown = QUANTITIES.filter((quantity) => answers.text(`${quantity}-${row}`) !== '')
    if (shown.length === 0 && ['from', 'to'].every((field) => answers.text(`${field}-${row}`) === '')) continue
    const from = answers.take(`from-${row}`, typedMeantDay)
    const to = answers.take(`to-${row}`, typedPastDay(on))
    if (shown.length === 0)
      answers.fault(`heatHours-${row}`, 'Write the hours of heating, cooling or fan, whichever it shows.')
    if (from && to && to < from) answers.fault(`to-${row}`, `It cannot end before it begins (${from}).`)
    const days = from && to && from <= to ? daysBetween(from, to) + 1 : null
    const hours = typedQuantity({ min: 0, max: 24 * (days ?? 40_000), unit: 'hours, as many as these days have' })
    const read = shown.map((quantity) => [quantity, answers.take(`${quantity}-${row}`, hours)] as const)
    if (!from || !to || days === null) continue
    const reading: Reading = { system: system?.id ?? '', from, to, source: 'thermostat', ...Object.fromEntries(read) }
    const other = clashingReadings([...readings, reading])?.find((one) => one !== reading)
    if (other)
      answers.fault(
        `from-${row}`,
        `${from} to ${to} and ${other.from} to ${other.to} share days: a row begins the day after the last one ended.`,
      )
    else readings.push(reading)
  }
  if (readings.length === 0 && answers.faults.length === 0) answers.fault('from-0', 'Write the hours of some days.')
  return answers.result(() => readings.map((reading) => ({ ...reading, system: known(system).id })))
}
