import { expect, test } from 'vitest'
import { dustEventInWords, readingInWords, weatherInWords } from '@/lib/core/reading-words'
import { aHousehold } from '../support/a-household'

const HOME = aHousehold()
const SEPTEMBER = { system: 'main', from: '2026-09-01', to: '2026-09-30' }
const TWO = { ...HOME, systems: [{ ...HOME.systems[0], id: 'attic', name: 'Attic' }, ...HOME.systems] } as typeof HOME

test('a time of more dust is told by what it was and its days', () => {
  expect(dustEventInWords({ kind: 'renovation', from: '2026-09-21', to: '2026-10-16' })).toBe(
    'Building work, 21 September 2026 to 16 October 2026',
  )
  const kinds = ['smoke', 'dust'] as const
  const told = kinds.map((kind) => dustEventInWords({ kind, from: '2026-09-21', to: '2026-10-16' }).split(',')[0])
  expect(told).toEqual(['Wildfire smoke', 'Dust or pollen'])
})

test('measured hours are told by the system’s own name, and only those that were measured', () => {
  const told = (hours: Record<string, number>, home = HOME, system = 'main') =>
    readingInWords(home, { ...SEPTEMBER, system, source: 'thermostat', ...hours }).split(': ')
  const [span] = told({ heatHours: 18.5 })
  expect(span).toBe('Main system, 1 September 2026 to 30 September 2026')
  expect(told({ heatHours: 18.5 }, TWO)[0]).toBe(span)
  expect(told({ heatHours: 18.5 }, TWO, 'attic')[0]).toMatch(/^Attic, /)
  // A system that was taken out since has no name any more.
  expect(told({ heatHours: 18.5 }, HOME, 'cellar')[0]).toMatch(/^cellar, /)
  expect(told({ heatHours: 4.5 })[1]).toBe('4.5 hours of heating, from the thermostat')
  expect(told({ coolHours: 0 })[1]).toBe('0 hours of cooling, from the thermostat')
  expect(told({ heatHours: 20, coolHours: 1, fanHours: 33 })[1]).toBe(
    '20 hours of heating, 1 hour of cooling, 33 hours of the fan in all, from the thermostat',
  )
  expect(readingInWords(HOME, { ...SEPTEMBER, source: 'hour-meter', fanHours: 40 })).toBe(
    `${span}: 40 hours of the fan in all, from an hour meter`,
  )
})

test('a bill is told by its gas, and what of it heated nothing, if any did', () => {
  const told = (baseTherms: number) =>
    readingInWords(HOME, { ...SEPTEMBER, source: 'bill', therms: 64.2, baseTherms }).split(': ')[1]
  expect(told(15)).toBe('a bill of 64.2 therms, 15.0 of them not for heating')
  expect(told(0)).toBe('a bill of 64.2 therms')
  // 64.2 therms of 105.5 MJ.
  const metric = { ...HOME, units: 'metric' as const }
  expect(readingInWords(metric, { ...SEPTEMBER, source: 'bill', therms: 64.2, baseTherms: 15 }).split(': ')[1]).toBe(
    'a bill of 6.77 GJ, 1.58 of them not for heating',
  )
})

test('a spell of weather is told by its days and its degrees, in the units of the home', () => {
  const spell = { from: '2026-07-03', to: '2026-07-12', highF: 101, lowF: 77 }
  expect(weatherInWords({ kind: 'hot', ...spell }, 'us')).toBe(
    'A heat wave, 3 July 2026 to 12 July 2026, 101 °F by day and 77 °F by night',
  )
  expect(weatherInWords({ kind: 'cold', ...spell, highF: 14, lowF: -4 }, 'metric')).toBe(
    'A cold spell, 3 July 2026 to 12 July 2026, −10 °C by day and −20 °C by night',
  )
})
