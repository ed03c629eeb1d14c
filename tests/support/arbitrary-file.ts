import fc from 'fast-check'
import { dayText } from '@/lib/core/day'
import {
  COOL_SOURCES,
  DEVICE_KINDS,
  type Device,
  DOERS,
  DUST_EVENT_KINDS,
  FILTER_PLACES,
  type Filter,
  HEAT_SOURCES,
  type Household,
  LIGHTS,
  type LogRecord,
  MEDIA,
  type Reading,
  type System,
  TENURES,
} from '@/lib/core/household'

/** The day that every generated household is valid on. */
export const ON = '2026-11-25'

const pastDay = fc.integer({ min: 12_000, max: 20_782 }).map(dayText)
const label = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
  .filter((text) => text.trim() !== '' && !/[\p{Cc}\p{Cs}]/u.test(text))
const optional = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined })
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0)

/** Keys that hold nothing are absent, as in a file. */
function compact<T>(value: T): T {
  if (Array.isArray(value)) return value.map(compact) as T
  if (typeof value !== 'object' || value === null) return value
  const held = Object.entries(value).filter(([, part]) => part !== undefined)
  return Object.fromEntries(held.map(([key, part]) => [key, compact(part)])) as T
}

const DELIVERIES_OF = {
  furnace: ['ducted', 'ductless'],
  'dual-fuel': ['ducted'],
  boiler: ['hydronic', 'ducted', 'room'],
  pump: ['ducted', 'ductless', 'hydronic', 'room'],
  room: ['room'],
} as const

function deliveriesFor(source: string | undefined) {
  if (source === 'wall-furnace' || source === 'electric-baseboard') return DELIVERIES_OF.room
  if (source === 'dual-fuel') return DELIVERIES_OF['dual-fuel']
  if (source?.endsWith('furnace')) return DELIVERIES_OF.furnace
  return source?.endsWith('boiler') ? DELIVERIES_OF.boiler : DELIVERIES_OF.pump
}

function system(id: string): fc.Arbitrary<System> {
  return optional(fc.constantFrom(...HEAT_SOURCES)).chain((source) =>
    fc.record({
      id: fc.constant(id),
      name: label,
      delivery: fc.constantFrom(...deliveriesFor(source)),
      heat: source
        ? fc.record({
            source: fc.constant(source),
            inputBtuh: optional(between(10_000, 400_000)),
            outputBtuh: optional(between(1000, 480_000)),
            efficiency: source === 'heat-pump' ? fc.constant(undefined) : optional(between(0.3, 1.2)),
            riseF: optional(between(5, 200)),
            installed: optional(fc.integer({ min: 1900, max: 2026 })),
          })
        : fc.constant(undefined),
      cool: optional(
        fc.record({
          source: fc.constantFrom(...COOL_SOURCES),
          tons: optional(between(0.5, 10)),
          installed: optional(fc.integer({ min: 1900, max: 2026 })),
        }),
      ),
      fan: optional(
        fc.oneof(
          fc.constant({ mode: 'auto' as const }),
          fc.constant({ mode: 'on' as const }),
          fc.record({ mode: fc.constant('circulate' as const), minutesPerHour: between(1, 60) }),
        ),
      ),
      thermostat: optional(fc.record({ heatSetpointF: between(40, 90), coolSetpointF: between(40, 90) })),
      airflowCfm: optional(fc.record({ heat: optional(between(1, 20_000)), cool: optional(between(1, 20_000)) })),
      dustStart: optional(
        fc.record({
          median: between(0.14, 7.3),
          spread: between(0.05, 0.5),
          systems: fc.integer({ min: 1, max: 1_000_000 }),
        }),
      ),
    }),
  )
}

function placesFor({ delivery }: System) {
  return FILTER_PLACES.filter((place) => {
    if (place === 'ventilator') return true
    if (delivery === 'ducted') return place !== 'ductless-head'
    return delivery === 'ductless' && (place === 'ductless-head' || place.endsWith('cabinet'))
  })
}

function filter(id: string, systems: readonly System[]): fc.Arbitrary<Filter> {
  return fc.constantFrom(...systems).chain((of) =>
    fc.record({
      id: fc.constant(id),
      system: fc.constant(of.id),
      place: fc.constantFrom(...placesFor(of)),
      nominal: fc.record({ widthIn: between(4, 40), heightIn: between(4, 40), depthIn: between(0.5, 6) }),
      medium: fc.constantFrom(...MEDIA),
      merv: optional(fc.integer({ min: 1, max: 20 })),
      labelLimitDays: optional(fc.integer({ min: 1, max: 3650 })),
    }),
  )
}

function device(id: string, systems: readonly System[]): fc.Arbitrary<Device> {
  return fc.record({
    id: fc.constant(id),
    kind: fc.constantFrom(...DEVICE_KINDS),
    system: systems.length > 0 ? optional(fc.constantFrom(...systems.map((of) => of.id))) : fc.constant(undefined),
    made: optional(pastDay),
    endOfLife: optional(fc.integer({ min: 21_000, max: 30_000 }).map(dayText)),
  })
}

function record(systems: readonly System[], filters: readonly Filter[]): fc.Arbitrary<LogRecord>[] {
  const light = optional(fc.constantFrom(...LIGHTS))
  const fitted = optional(
    fc.record({ medium: fc.constantFrom(...MEDIA), merv: optional(fc.integer({ min: 1, max: 20 })) }),
  )
  const ofFilter = filters.map(({ id }) =>
    fc.oneof(
      fc.record({ on: pastDay, kind: fc.constant('filter-changed' as const), filter: fc.constant(id), light, fitted }),
      fc.record({ on: pastDay, kind: fc.constant('filter-looked' as const), filter: fc.constant(id), light }),
    ),
  )
  const ofSystem = systems.map(({ id }) =>
    fc.record({
      on: pastDay,
      kind: fc.constant('service-done' as const),
      task: fc.constantFrom('condensate-look' as const, 'outdoor-unit-clear' as const),
      subject: fc.constant(id),
      by: optional(fc.constantFrom(...DOERS)),
    }),
  )
  return [...ofFilter, ...ofSystem]
}

/** Readings one after another, so that none overlaps, with no more hours than the days have. */
function readings(of: System): fc.Arbitrary<Reading[]> {
  const hours = optional(between(0, 24))
  const one = fc.record({
    days: fc.integer({ min: 1, max: 40 }),
    gap: fc.integer({ min: 0, max: 9 }),
    heat: between(0, 24),
    cool: hours,
    fan: hours,
  })
  return fc.array(one, { maxLength: 4 }).map((spans) => {
    let next = 19_000
    return spans.map(({ days, gap, heat, cool, fan }, index): Reading => {
      const from = next + gap
      next = from + days
      const span = { system: of.id, from: dayText(from), to: dayText(next - 1) }
      if (of.heat?.inputBtuh !== undefined && index % 2 === 1) {
        return {
          ...span,
          source: 'bill',
          therms: Math.floor((heat * days * of.heat.inputBtuh) / 100_000),
          baseTherms: 0,
        }
      }
      const scaled = (value: number | undefined) => (value === undefined ? undefined : value * days)
      return { ...span, source: 'thermostat', heatHours: heat * days, coolHours: scaled(cool), fanHours: scaled(fan) }
    })
  })
}

const climate = fc.oneof(
  fc.record({
    kind: fc.constant('annual' as const),
    hdd65: between(0, 20_000),
    cdd65: between(0, 8000),
    heatingDesignF: between(-60, 65),
    coolingDesignF: between(65, 125),
  }),
  fc.record({
    kind: fc.constant('monthly' as const),
    hdd65: fc.array(between(0, 1600), { minLength: 12, maxLength: 12 }),
    cdd65: fc.array(between(0, 660), { minLength: 12, maxLength: 12 }),
    heatingDesignF: between(-60, 65),
    coolingDesignF: between(65, 125),
  }),
)

const TIME_ZONES = ['America/Chicago', 'Europe/Berlin', 'Pacific/Kiritimati', 'UTC']

function plain(id: string) {
  return fc.record({
    id: fc.constant(id),
    name: label,
    building: optional(label),
    tenure: fc.constantFrom(...TENURES),
    since: optional(pastDay),
    timeZone: fc.constantFrom(...TIME_ZONES),
    units: fc.constantFrom('us' as const, 'metric' as const),
    elevationFt: optional(between(-300, 12_000)),
    emergencyNumber: optional(fc.constantFrom('911', '112', '+1 (555) 555-0100')),
    climate,
    people: fc.integer({ min: 0, max: 30 }),
    pets: fc.integer({ min: 0, max: 30 }),
    petFactor: optional(between(0.1, 10)),
    smoking: fc.boolean(),
    carpet: fc.boolean(),
    hardWater: fc.boolean(),
    vulnerable: fc.boolean(),
    dustEvents: fc.array(
      fc.record({
        kind: fc.constantFrom(...DUST_EVENT_KINDS),
        from: pastDay,
        to: fc.integer({ min: 20_783, max: 21_000 }).map(dayText),
      }),
      { maxLength: 3 },
    ),
  })
}

function lists(
  systems: System[],
): fc.Arbitrary<Pick<Household, 'systems' | 'filters' | 'devices' | 'records' | 'readings'>> {
  const filterIds = systems.length === 0 ? fc.constant([]) : fc.uniqueArray(label, { maxLength: 3 })
  const filters = filterIds.chain((ids) => fc.tuple(...ids.map((id) => filter(id, systems))))
  const devices = fc
    .uniqueArray(label, { maxLength: 3 })
    .chain((ids) => fc.tuple(...ids.map((id) => device(id, systems))))
  return fc.tuple(filters, devices, fc.tuple(...systems.map(readings))).chain(([filters, devices, measured]) => {
    const records = record(systems, filters)
    return fc.record({
      systems: fc.constant(systems),
      filters: fc.constant(filters),
      devices: fc.constant(devices),
      records: records.length === 0 ? fc.constant([]) : fc.array(fc.oneof(...records), { maxLength: 5 }),
      readings: fc.constant(measured.flat()),
    })
  })
}

/** Households that the file format allows, together in one file: ids unique, references whole, valid on `ON`. */
export function householdFile(): fc.Arbitrary<Household[]> {
  return fc.uniqueArray(label, { maxLength: 3 }).chain((ids) =>
    fc.tuple(
      ...ids.map((id) =>
        fc
          .uniqueArray(label, { maxLength: 2 })
          .chain((systems) => fc.tuple(...systems.map(system)))
          .chain((systems) => fc.tuple(plain(id), lists(systems)))
          .map(([facts, parts]): Household => compact({ ...facts, ...parts })),
      ),
    ),
  )
}
