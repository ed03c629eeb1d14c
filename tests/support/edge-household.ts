import fc from 'fast-check'
import { addDays, type Day, daysBetween, FIRST_DAY, LAST_DAY } from '@/lib/core/day'
import type { Device, Household, LogRecord, Reading, Task } from '@/lib/core/household'
import { household } from './arbitrary-household'

/** Days at the edges of what doors take, and leap days. */
const EDGES: readonly Day[] = [
  ...[FIRST_DAY, '1901-01-20', '1901-06-15', '1904-02-29', '1989-12-31', '2024-02-29'],
  ...['2096-02-29', '2098-07-01', '2099-02-01', '2099-09-30', '2099-12-15', LAST_DAY],
]

const edge = fc.constantFrom(...EDGES)

/** Any day of 1990 to 2099, its ends and leap days more often than chance would bring them. */
export const anyPlanDay: fc.Arbitrary<Day> = fc.oneof(
  fc.constantFrom('1990-01-01', '2026-11-25', '2028-02-29', '2096-02-29', '2099-12-01', LAST_DAY),
  fc.nat(daysBetween('1990-01-01', LAST_DAY)).map((more) => addDays('1990-01-01', more)),
)

const ON_SYSTEMS: readonly Task[] = [
  ...(['heating-service', 'cooling-service', 'boiler-service', 'outdoor-unit-clear', 'condensate-look'] as const),
]
const ON_DEVICES: Partial<Record<Device['kind'], Task[]>> = {
  'smoke-alarm': ['alarm-test', 'alarm-replace'],
  'co-alarm': ['alarm-test', 'alarm-replace'],
  erv: ['ventilator-hoods', 'ventilator-core'],
  hrv: ['ventilator-hoods', 'ventilator-core'],
  humidifier: ['humidifier-pad'],
  'water-heater-gas': ['water-heater-look'],
  'water-heater-electric': ['water-heater-look'],
}

/** Homes as a household file may bring them, with every day of theirs at an edge. */
export const edgeHousehold: fc.Arbitrary<Household> = fc
  .tuple(household(), fc.array(edge, { minLength: 40, maxLength: 40 }), fc.boolean())
  .map(([home, days, isServed]) => onDays(home, days, isServed))

function onDays(home: Household, days: readonly Day[], isServed: boolean): Household {
  let next = 0
  const day = () => days[next++ % days.length] as Day
  // All near one edge: with two centuries of days of its own between them a home takes its time.
  const near = day()
  const span = () => spanAt(near, next++ % 30)
  const services: LogRecord[] = [
    ...home.systems.flatMap(({ id }) => ON_SYSTEMS.map((task) => ({ task, subject: id }))),
    ...home.devices.flatMap(({ id, kind }) => (ON_DEVICES[kind] ?? []).map((task) => ({ task, subject: id }))),
  ].map((done) => ({ ...done, kind: 'service-done', on: day() }))
  return {
    ...home,
    since: day(),
    dustEvents: home.dustEvents.map((event) => ({ ...event, ...span() })),
    ...(home.weather && { weather: home.weather.map((spell) => ({ ...spell, ...span() })) }),
    devices: home.devices.map((device) => {
      const [made = '', endOfLife = ''] = [day(), day()].sort()
      return { ...device, ...(device.made && { made }), ...(device.endOfLife && { endOfLife }) }
    }),
    records: [
      ...home.records.filter(({ kind }) => kind !== 'service-done').map((record) => ({ ...record, on: day() })),
      ...(isServed ? services : []),
    ],
    // One a system, so that none overlap.
    readings: home.systems.flatMap(({ id }) => {
      const old = home.readings.find(({ system }) => system === id)
      return old ? [readingOn(old, span())] : []
    }),
  }
}

/** Up to a month and a half, from a day on or up to it. */
function spanAt(day: Day, length: number): { from: Day; to: Day } {
  return day < '2000' ? { from: day, to: addDays(day, length + 15) } : { from: addDays(day, -length - 15), to: day }
}

function readingOn(old: Reading, span: { from: Day; to: Day }): Reading {
  if (old.source === 'bill') return { ...old, ...span }
  const hours = 8 * (daysBetween(span.from, span.to) + 1)
  return { ...old, ...span, heatHours: hours / 2, coolHours: hours / 4, fanHours: hours }
}
