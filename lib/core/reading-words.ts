import { dateInWords } from './day-words'
import type { DustEvent, DustEventKind, Household, Reading, WeatherSpell } from './household'
import { subjectInWords } from './subject-words'
import { hoursInWords, JOULES_PER_BTU, roughly, temperatureInWords, type Units } from './unit-words'

const EVENTS: Record<DustEventKind, string> = {
  renovation: 'Building work',
  smoke: 'Wildfire smoke',
  dust: 'Dust or pollen',
}

/** `Building work, 21 September 2026 to 16 October 2026`. */
export function dustEventInWords({ kind, from, to }: DustEvent): string {
  return `${EVENTS[kind]}, ${dateInWords(from)} to ${dateInWords(to)}`
}

// A therm is 100,000 Btu.
const FUEL: Record<Units, { name: string; each: number }> = {
  us: { name: 'therms', each: 1 },
  metric: { name: 'GJ', each: (100_000 * JOULES_PER_BTU) / 1e9 },
}

const SOURCES = { thermostat: 'from the thermostat', 'hour-meter': 'from an hour meter' } as const

/** `Furnace, 1 September 2026 to 30 September 2026: 18.5 hours of heating, from the thermostat`. */
export function readingInWords(home: Household, reading: Reading): string {
  const span = `${subjectInWords(home, reading.system)}, ${dateInWords(reading.from)} to ${dateInWords(reading.to)}`
  if (reading.source === 'bill') {
    const fuel = FUEL[home.units]
    const base = reading.baseTherms > 0 ? `, ${roughly(reading.baseTherms * fuel.each)} of them not for heating` : ''
    return `${span}: a bill of ${roughly(reading.therms * fuel.each)} ${fuel.name}${base}`
  }
  const hours = [
    reading.heatHours !== undefined && `${hoursInWords(reading.heatHours)} of heating`,
    reading.coolHours !== undefined && `${hoursInWords(reading.coolHours)} of cooling`,
    reading.fanHours !== undefined && `${hoursInWords(reading.fanHours)} of the fan in all`,
  ]
  return `${span}: ${hours.filter(Boolean).join(', ')}, ${SOURCES[reading.source]}`
}

/** `A heat wave, 3 July 2026 to 12 July 2026, 101 °F by day and 78 °F by night`. */
export function weatherInWords({ kind, from, to, highF, lowF }: WeatherSpell, units: Units): string {
  const degrees = `${temperatureInWords(highF, units)} by day and ${temperatureInWords(lowF, units)} by night`
  return `${kind === 'hot' ? 'A heat wave' : 'A cold spell'}, ${dateInWords(from)} to ${dateInWords(to)}, ${degrees}`
}
