import fc from 'fast-check'
import { addDays, dayText } from '@/lib/core/day'
import {
  DEVICE_KINDS,
  type Device,
  DOERS,
  DUST_EVENT_KINDS,
  type Filter,
  type FilterPlace,
  type Household,
  LIGHTS,
  type LogRecord,
  type Medium,
  type Reading,
  type System,
  TENURES,
  WEATHER_KINDS,
} from '@/lib/core/household'

/** Records and readings of these households end before this day. */
export const ARBITRARY_TODAY = '2026-11-25'

const words = fc
  .string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 24 })
  .map((text) => text.trim())
  .filter((text) => text.length > 0)
const name = fc.oneof(
  words,
  fc.constantFrom('Flat “3½”, häuschen', '台所の家', "O'Neil; DROP TABLE", 'Larkspur Court 2'),
)
const day = (from: number, to: number) => fc.integer({ min: from, max: to }).map(dayText)
/** 2019-01-01 to 2026-11-24. */
const pastDay = day(17_897, 20_781)
const id = fc.stringMatching(/^[a-z][a-z0-9-]{0,10}[a-z0-9]$/)
const number = (min: number, max: number) =>
  fc
    .oneof(fc.integer({ min: Math.ceil(min), max: Math.floor(max) }), fc.double({ min, max, noNaN: true }))
    .map((value) => value + 0)

/** Optional keys: present or absent, never `undefined`. */
function maybe<T extends object>(shape: { [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<Partial<T>> {
  return fc.record(shape, { requiredKeys: [] }) as fc.Arbitrary<Partial<T>>
}

const design = { heatingDesignF: number(-60, 65), coolingDesignF: number(65, 125) }
const climate = fc.oneof(
  fc.record({ kind: fc.constant('annual' as const), hdd65: number(0, 20_000), cdd65: number(0, 8_000), ...design }),
  fc.record({
    kind: fc.constant('monthly' as const),
    hdd65: fc.array(number(0, 1500), { minLength: 12, maxLength: 12 }),
    cdd65: fc.array(number(0, 600), { minLength: 12, maxLength: 12 }),
    ...design,
  }),
)

const installed = fc.integer({ min: 1980, max: 2026 })
const ratings = {
  inputBtuh: number(10_000, 400_000),
  outputBtuh: number(8_000, 300_000),
  efficiency: number(0.3, 1),
  riseF: number(30, 90),
  installed,
}
const fan = fc.oneof(
  fc.constant({ mode: 'auto' as const }),
  fc.constant({ mode: 'on' as const }),
  fc.record({ mode: fc.constant('circulate' as const), minutesPerHour: fc.integer({ min: 1, max: 60 }) }),
)
const thermostat = fc.record({ heatSetpointF: number(55, 74), coolSetpointF: number(75, 88) })

function merge<A extends object, B extends object>(a: fc.Arbitrary<A>, b: fc.Arbitrary<B>): fc.Arbitrary<A & B> {
  return fc.tuple(a, b).map(([first, second]) => ({ ...first, ...second }))
}

const furnace = merge(
  fc.record({ source: fc.constantFrom('gas-furnace' as const, 'propane-furnace' as const, 'oil-furnace' as const) }),
  // An output beside an input is at most what the input holds.
  maybe(ratings).map(({ outputBtuh, ...rest }) =>
    outputBtuh === undefined || rest.inputBtuh !== undefined || rest.efficiency !== undefined
      ? rest
      : { ...rest, outputBtuh },
  ),
)
const cooling = merge(
  fc.record({ source: fc.constant('central-ac' as const) }),
  maybe({ tons: number(0.5, 10), installed }),
)
const heatPump = merge(fc.record({ source: fc.constant('heat-pump' as const) }), maybe({ installed }))
const boiler = merge(
  fc.record({ source: fc.constantFrom('gas-boiler' as const, 'oil-boiler' as const, 'electric-boiler' as const) }),
  maybe({ installed }),
)

/** One heating or cooling system, with the filters that could be in it. */
function system(systemId: string): fc.Arbitrary<System> {
  const base = fc.record({ id: fc.constant(systemId), name })
  const moving = { fan, thermostat, airflowCfm: maybe({ heat: number(200, 2500), cool: number(200, 2500) }) }
  return fc.oneof(
    merge(
      merge(base, fc.constant({ delivery: 'ducted' as const })),
      maybe({ heat: furnace, cool: cooling, ...moving }),
    ),
    merge(
      merge(base, fc.constant({ delivery: 'ductless' as const })),
      fc
        .record({ heat: heatPump, cool: heatPump })
        .chain((both) => maybe(moving).map((more) => ({ ...both, ...more }))),
    ),
    merge(merge(base, fc.constant({ delivery: 'hydronic' as const })), maybe({ heat: boiler, thermostat })),
  )
}

function filter(filterId: string, { id: systemId, delivery }: System): fc.Arbitrary<Filter> {
  const places: FilterPlace[] =
    delivery === 'ducted' ? ['ceiling-grille', 'wall-grille', 'floor-grille', 'furnace-slot'] : ['ductless-head']
  const media: Medium[] = delivery === 'ducted' ? ['fiberglass', 'pleated', 'washable'] : ['screen']
  const nominal = fc.record({ widthIn: number(4, 40), heightIn: number(4, 40), depthIn: number(0.5, 6) })
  const known = fc.record({
    id: fc.constant(filterId),
    system: fc.constant(systemId),
    place: fc.constantFrom(...places),
    nominal,
    medium: fc.constantFrom(...media),
  })
  return merge(
    known,
    maybe({ merv: fc.integer({ min: 1, max: 16 }), labelLimitDays: fc.integer({ min: 1, max: 730 }) }),
  )
}

function device(deviceId: string, systems: System[]): fc.Arbitrary<Device> {
  const made = day(14_000, 17_000)
  const endOfLife = day(17_001, 24_000)
  const known = fc.record({ id: fc.constant(deviceId), kind: fc.constantFrom(...DEVICE_KINDS) })
  const ids = systems.map((one) => one.id)
  return merge(known, maybe({ made, endOfLife, ...(ids.length > 0 && { system: fc.constantFrom(...ids) }) }))
}

function record(filters: Filter[], systems: System[], devices: Device[]): fc.Arbitrary<LogRecord> | null {
  const kinds: fc.Arbitrary<LogRecord>[] = []
  const light = fc.constantFrom(...LIGHTS)
  if (filters.length > 0) {
    const at = { on: pastDay, filter: fc.constantFrom(...filters.map((one) => one.id)) }
    const fitted = merge(
      fc.record({ medium: fc.constantFrom<Medium>('fiberglass', 'pleated') }),
      maybe({ merv: fc.integer({ min: 1, max: 16 }) }),
    )
    kinds.push(
      merge(fc.record({ kind: fc.constant('filter-changed' as const), ...at }), maybe({ light, fitted })),
      merge(fc.record({ kind: fc.constant('filter-looked' as const), ...at }), maybe({ light })),
    )
  }
  const service = (task: 'heating-service' | 'boiler-service' | 'alarm-test', subjects: string[]) => {
    if (subjects.length === 0) return
    const known = fc.record({
      kind: fc.constant('service-done' as const),
      on: pastDay,
      task: fc.constant(task),
      subject: fc.constantFrom(...subjects),
    })
    kinds.push(
      merge(known, maybe({ by: fc.constantFrom(...(task !== 'alarm-test' ? (['technician'] as const) : DOERS)) })),
    )
  }
  service(
    'heating-service',
    systems.filter((one) => one.heat && one.delivery !== 'hydronic').map((one) => one.id),
  )
  service(
    'boiler-service',
    systems.filter((one) => one.heat && one.delivery === 'hydronic').map((one) => one.id),
  )
  service(
    'alarm-test',
    devices.filter((one) => one.kind.endsWith('alarm')).map((one) => one.id),
  )
  return kinds.length > 0 ? fc.oneof(...kinds) : null
}

// Each reading has a month of its own, so that none overlap, and no more hours than it has.
function reading(systems: System[]): (month: number) => fc.Arbitrary<Reading> {
  return (month) => {
    const from = `2025-${String(month).padStart(2, '0')}-01`
    const span = {
      system: fc.constantFrom(...systems.map((one) => one.id)),
      from: fc.constant(from),
      to: fc.constant(`${from.slice(0, 8)}28`),
    }
    const source = fc.constantFrom('thermostat' as const, 'hour-meter' as const)
    const hours = merge(
      fc.record({ ...span, source, heatHours: number(0, 300) }),
      maybe({ coolHours: number(0, 300), fanHours: number(600, 672) }),
    )
    const metered = systems
      .filter((one) => one.heat?.source === 'gas-furnace' && one.heat.inputBtuh !== undefined)
      .map((one) => one.id)
    if (metered.length === 0) return hours
    const therms = { therms: number(5, 25), baseTherms: number(0, 5) }
    const bill = fc.record({
      ...span,
      system: fc.constantFrom(...metered),
      source: fc.constant('bill' as const),
      ...therms,
    })
    return fc.oneof(hours, bill)
  }
}

function each<T, U>(list: T[], make: (item: T) => fc.Arbitrary<U>): fc.Arbitrary<U[]> {
  return list.length === 0 ? fc.constant([]) : (fc.tuple(...list.map(make)) as unknown as fc.Arbitrary<U[]>)
}

/** A valid household, with everything that a household file can say. */
export function household(): fc.Arbitrary<Household> {
  const ids = (max: number) => fc.uniqueArray(id, { maxLength: max })
  return (
    fc
      .record({ systems: ids(3), filters: ids(4), devices: ids(4) })
      .chain(({ systems, filters, devices }) =>
        each(
          systems.map((one) => `s-${one}`),
          system,
        ).chain((made) => {
          const airy = made.filter((one) => one.delivery !== 'hydronic')
          const placed =
            airy.length > 0 ? filters.map((one, i) => [`f-${one}`, airy[i % airy.length] as System] as const) : []
          return fc.tuple(
            fc.constant(made),
            each(placed, ([filterId, of]) => filter(filterId, of)),
            each(
              devices.map((one) => `d-${one}`),
              (one) => device(one, made),
            ),
          )
        }),
      )
      .chain(([systems, filters, devices]) => {
        const records = record(filters, systems, devices)
        return fc.tuple(
          fc.constant({ systems, filters, devices }),
          records ? fc.array(records, { maxLength: 8 }) : fc.constant<LogRecord[]>([]),
          fc
            .uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: systems.length > 0 ? 4 : 0 })
            .chain((months) => each(months, reading(systems))),
        )
      })
      .chain(([parts, records, readings]) =>
        merge(
          fc.record({
            id,
            name,
            tenure: fc.constantFrom(...TENURES),
            timeZone: fc.constantFrom('America/Chicago', 'Europe/Berlin', 'Asia/Kolkata', 'Pacific/Auckland'),
            units: fc.constantFrom('us' as const, 'metric' as const),
            climate,
            people: fc.integer({ min: 0, max: 30 }),
            pets: fc.integer({ min: 0, max: 30 }),
            ...{ smoking: fc.boolean(), carpet: fc.boolean(), hardWater: fc.boolean(), vulnerable: fc.boolean() },
            dustEvents: fc.array(
              fc
                .tuple(fc.constantFrom(...DUST_EVENT_KINDS), fc.integer({ min: 20_000, max: 20_500 }), fc.nat(60))
                .map(([kind, from, days]) => ({ kind, from: dayText(from), to: dayText(from + days) })),
              { maxLength: 3 },
            ),
            ...{
              systems: fc.constant(parts.systems),
              filters: fc.constant(parts.filters),
              devices: fc.constant(parts.devices),
            },
            ...{ records: fc.constant(records), readings: fc.constant(readings) },
          }),
          maybe({
            building: name,
            since: day(16_000, 17_896),
            elevationFt: number(-300, 12_000),
            emergencyNumber: fc.constantFrom('911', '112', '000'),
            petFactor: number(1, 2),
            weather: fc.array(
              fc
                .tuple(fc.constantFrom(...WEATHER_KINDS), pastDay, number(-20, 70), fc.integer({ min: 0, max: 20 }))
                .map(([kind, from, lowF, more]) => ({ kind, from, to: addDays(from, more), highF: lowF + more, lowF })),
              { minLength: 1, maxLength: 3 },
            ),
          }),
        ),
      )
      // As a file would give it: plain objects.
      .map((made) => JSON.parse(JSON.stringify(made)) as Household)
  )
}

/** Households of one file: their ids differ. */
export function households(max = 5): fc.Arbitrary<Household[]> {
  return fc.uniqueArray(household(), { maxLength: max, minLength: 1, selector: (one) => one.id })
}
