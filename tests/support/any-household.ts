import fc from 'fast-check'
import { addDays, type Day } from '@/lib/core/day'
import {
  type Climate,
  DEVICE_KINDS,
  type Device,
  DUST_EVENT_KINDS,
  type Household,
  LIGHTS,
  type LogRecord,
  type Reading,
  type System,
} from '@/lib/core/household'
import { anyFilter, anySystem, compact } from './any-system'

const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: undefined })
const whole = (min: number, max: number) => fc.integer({ min, max })

/** Days on which plans are made: any of nine years, with leap days more often than chance would bring them. */
export const anyOn: fc.Arbitrary<Day> = fc.oneof(
  { weight: 9, arbitrary: whole(0, 3285).map((n) => addDays('2022-01-01', n)) },
  { weight: 1, arbitrary: fc.constantFrom('2024-02-29', '2024-03-01', '2028-02-29', '2027-02-28') },
)

const design = { heatingDesignF: whole(-40, 62), coolingDesignF: whole(70, 115) }
const month = fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 1600, noNaN: true }))

/** Hot, cold, flat and impossible climates: two numbers a year or two a month. */
export const anyClimate: fc.Arbitrary<Climate> = fc.oneof(
  fc.record({
    kind: fc.constant('annual' as const),
    hdd65: fc.oneof(fc.constantFrom(0, 3000, 3001), whole(0, 14_000)),
    cdd65: fc.oneof(fc.constantFrom(0), whole(0, 6000)),
    ...design,
  }),
  fc.record({
    kind: fc.constant('monthly' as const),
    hdd65: fc.array(month, { minLength: 12, maxLength: 12 }),
    cdd65: fc.array(month, { minLength: 12, maxLength: 12 }),
    ...design,
  }),
)

function anyRecord(on: Day, ids: { filters: string[]; systems: string[]; devices: string[] }): fc.Arbitrary<LogRecord> {
  const day = whole(0, 800).map((ago) => addDays(on, -ago))
  const light = maybe(fc.constantFrom(...LIGHTS))
  const filter = fc.constantFrom(...ids.filters)
  const fitted = maybe(
    fc
      .record({ medium: fc.constantFrom('fiberglass', 'pleated', 'media' as const), merv: maybe(whole(1, 16)) })
      .map(compact),
  )
  const subject = fc.constantFrom(...ids.systems, ...ids.devices)
  const task = fc.constantFrom(
    ...(['heating-service', 'cooling-service', 'boiler-service', 'condensate-look', 'humidifier-pad'] as const),
    ...(['outdoor-unit-clear', 'ventilator-hoods', 'ventilator-core', 'water-heater-look'] as const),
    ...(['alarm-test', 'alarm-replace'] as const),
  )
  return fc
    .oneof(
      {
        weight: 3,
        arbitrary: fc.record({ on: day, kind: fc.constant('filter-changed' as const), filter, light, fitted }),
      },
      { weight: 3, arbitrary: fc.record({ on: day, kind: fc.constant('filter-looked' as const), filter, light }) },
      { weight: 4, arbitrary: fc.record({ on: day, kind: fc.constant('service-done' as const), task, subject }) },
    )
    .map((record) => compact(record) as LogRecord)
}

/** Readings of one system, one before the other, so that none overlap. */
function anyReadings(on: Day, system: System): fc.Arbitrary<Reading[]> {
  const one = fc.record({
    gap: whole(0, 60),
    length: whole(1, 70),
    isBill: fc.boolean(),
    percents: fc.array(maybe(whole(0, 100)), { minLength: 3, maxLength: 3 }),
    therms: whole(0, 200),
    baseTherms: whole(0, 30),
  })
  return fc.array(one, { maxLength: 4 }).map((parts) => {
    let end = on
    return parts.map(({ gap, length, isBill, percents, therms, baseTherms }): Reading => {
      const to = addDays(end, -gap)
      const from = addDays(to, 1 - length)
      end = addDays(from, -1)
      if (isBill && system.heat?.inputBtuh) return { system: system.id, from, to, source: 'bill', therms, baseTherms }
      const [heatHours, coolHours, fanHours] = percents.map((p) =>
        p === undefined ? undefined : (p / 100) ** 2 * 24 * length,
      )
      return compact({ system: system.id, from, to, source: 'thermostat' as const, heatHours, coolHours, fanHours })
    })
  })
}

function anyDevice(id: string, on: Day, systems: string[]): fc.Arbitrary<Device> {
  const device = fc.record({
    id: fc.constant(id),
    kind: fc.constantFrom(...DEVICE_KINDS),
    system: fc.constantFrom(...systems),
    made: maybe(whole(0, 4000).map((ago) => addDays(on, -ago))),
    endOfLife: maybe(whole(-900, 2000).map((ahead) => addDays(on, ahead))),
  })
  return device.map(compact)
}

/** A household as any file might bring it, and the day it is planned on. */
export const anyCase: fc.Arbitrary<{ home: Household; on: Day }> = fc
  .tuple(anyOn, whole(1, 2), whole(1, 4), whole(0, 5))
  .chain(([on, systemCount, filterCount, deviceCount]) => {
    const ids = (prefix: string, n: number) => Array.from({ length: n }, (_, i) => `${prefix}${i}`)
    const names = { systems: ids('s', systemCount), filters: ids('f', filterCount), devices: ids('d', deviceCount) }
    const event = fc
      .tuple(fc.constantFrom(...DUST_EVENT_KINDS), whole(-300, 200), whole(0, 90))
      .map(([kind, start, length]) => ({ kind, from: addDays(on, start), to: addDays(on, start + length) }))
    return fc.tuple(...names.systems.map(anySystem)).chain((systems) =>
      fc
        .record({
          id: fc.constant('home'),
          name: fc.constant('Home'),
          tenure: fc.constantFrom('own', 'rent', 'let' as const),
          since: maybe(whole(0, 500).map((ago) => addDays(on, -ago))),
          timeZone: fc.constant('UTC'),
          units: fc.constant('us' as const),
          elevationFt: maybe(whole(-200, 10_000)),
          climate: anyClimate,
          people: whole(0, 8),
          pets: whole(0, 6),
          petFactor: fc.option(fc.double({ min: 1, max: 3, noNaN: true }), { nil: undefined, freq: 2 }),
          smoking: fc.boolean(),
          carpet: fc.boolean(),
          hardWater: fc.boolean(),
          vulnerable: fc.boolean(),
          dustEvents: fc.array(event, { maxLength: 3 }),
          systems: fc.constant(systems),
          filters: fc.tuple(...names.filters.map((id) => anyFilter(id, names.systems))),
          devices: fc.tuple(...names.devices.map((id) => anyDevice(id, on, names.systems))),
          records: fc.array(anyRecord(on, names), { maxLength: 14 }),
          readings: fc.tuple(...systems.map((s) => anyReadings(on, s))).map((lists) => lists.flat()),
        })
        .map((home) => ({ home: compact(home) as Household, on })),
    )
  })
