import type { DustEvent, WeatherSpell } from '@/lib/core/household'
import { Answers, known, type Read, type Typed } from './describe/answers'
import { typedMeantDay, typedTemperature } from './quantities'

export const HAPPENED = ['smoke', 'renovation', 'dust', 'hot', 'cold'] as const

export type Happened = { list: 'dust'; event: DustEvent } | { list: 'weather'; spell: WeatherSpell }

/** Something that happened between two days; of a hot or cold time also how hot or cold, in the home's own degrees. */
export function readHappened(typed: Typed, units: 'us' | 'metric'): Read<Happened> {
  const answers = new Answers(typed)
  const what = answers.choice('what', HAPPENED, 'Choose what happened.')
  const from = answers.take('from', typedMeantDay)
  const to = answers.take('to', typedMeantDay)
  if (from && to && to < from) answers.fault('to', `It cannot end before it begins (${from}).`)
  if (what !== 'hot' && what !== 'cold')
    return answers.result(() => ({
      list: 'dust',
      event: { kind: known(what) as DustEvent['kind'], from: known(from), to: known(to) },
    }))
  const degrees = typedTemperature({ minF: -60, maxF: 130, unit: units === 'us' ? 'F' : 'C' })
  const highF = answers.take('high', degrees)
  const lowF = answers.take('low', degrees)
  if (highF !== undefined && lowF !== undefined && lowF > highF)
    answers.fault('low', 'The night cannot be warmer than the day.')
  return answers.result(() => ({
    list: 'weather',
    spell: { kind: what, from: known(from), to: known(to), highF: tenth(known(highF)), lowF: tenth(known(lowF)) },
  }))
}

// Degrees Celsius turned into Fahrenheit keep no tail of digits.
function tenth(value: number): number {
  return Math.round(value * 10) / 10
}
