import { dateInWords } from './day-words'
import type { DustEvent, DustEventKind, Household, Reading } from './household'
import { hoursInWords, roughly } from './unit-words'

const EVENTS: Record<DustEventKind, string> = {
  renovation: 'Building work',
  smoke: 'Wildfire smoke',
  dust: 'Dust or pollen',
}

export function eventKindInWords(kind: DustEventKind): string {
  return EVENTS[kind]
}

/** `Building work, 21 September 2026 to 16 October 2026`. */
export function dustEventInWords({ kind, from, to }: DustEvent): string {
  return `${EVENTS[kind]}, ${dateInWords(from)} to ${dateInWords(to)}`
}

const SOURCES = { thermostat: 'from the thermostat', 'hour-meter': 'from an hour meter' } as const

/** `Furnace, 1 September 2026 to 30 September 2026: 18.5 hours of heating, from the thermostat`. */
export function readingInWords(home: Household, reading: Reading): string {
  const system = home.systems.find(({ id }) => id === reading.system)?.name ?? reading.system
  const span = `${system}, ${dateInWords(reading.from)} to ${dateInWords(reading.to)}`
  if (reading.source === 'bill') {
    const base = reading.baseTherms > 0 ? `, ${roughly(reading.baseTherms)} of them not for heating` : ''
    return `${span}: a bill of ${roughly(reading.therms)} therms${base}`
  }
  const hours = [
    reading.heatHours !== undefined && `${hoursInWords(reading.heatHours)} of heating`,
    reading.coolHours !== undefined && `${hoursInWords(reading.coolHours)} of cooling`,
    reading.fanHours !== undefined && `${hoursInWords(reading.fanHours)} of the fan in all`,
  ]
  return `${span}: ${hours.filter(Boolean).join(', ')}, ${SOURCES[reading.source]}`
}
