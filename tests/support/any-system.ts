import fc from 'fast-check'
import { FILTER_PLACES, type Filter, HEAT_SOURCES, type System } from '@/lib/core/household'

const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: undefined })

/** Drops keys whose value is absent, as a file would. */
export function compact<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T
}

const anyHeat = fc
  .record({
    source: fc.constantFrom(...HEAT_SOURCES),
    inputBtuh: maybe(fc.integer({ min: 20_000, max: 150_000 })),
    outputBtuh: maybe(fc.integer({ min: 20_000, max: 120_000 })),
    efficiency: maybe(fc.double({ min: 0.6, max: 1, noNaN: true })),
    riseF: maybe(fc.integer({ min: 30, max: 80 })),
  })
  .map(compact)

const anyCool = fc
  .record({
    source: fc.constantFrom('central-ac' as const, 'heat-pump' as const),
    tons: maybe(fc.integer({ min: 1, max: 10 }).map((halves) => halves / 2)),
  })
  .map(compact)

const anyFan = fc.oneof(
  fc.constant({ mode: 'auto' as const }),
  fc.constant({ mode: 'on' as const }),
  fc.integer({ min: 1, max: 60 }).map((minutesPerHour) => ({ mode: 'circulate' as const, minutesPerHour })),
)

/** A system of any make, delivery and setting. */
export function anySystem(id: string): fc.Arbitrary<System> {
  return fc
    .record({
      id: fc.constant(id),
      name: fc.constant(id),
      delivery: fc.oneof(
        { weight: 6, arbitrary: fc.constant('ducted' as const) },
        { weight: 2, arbitrary: fc.constant('ductless' as const) },
        { weight: 1, arbitrary: fc.constantFrom('hydronic' as const, 'room' as const) },
      ),
      heat: fc.option(anyHeat, { nil: undefined, freq: 8 }),
      cool: fc.option(anyCool, { nil: undefined, freq: 4 }),
      fan: maybe(anyFan),
      thermostat: maybe(
        fc.record({
          heatSetpointF: fc.integer({ min: 55, max: 78 }),
          coolSetpointF: fc.integer({ min: 68, max: 84 }),
        }),
      ),
      airflowCfm: fc.option(
        fc
          .record({
            heat: maybe(fc.integer({ min: 300, max: 2000 })),
            cool: maybe(fc.integer({ min: 300, max: 2000 })),
          })
          .map(compact),
        { nil: undefined, freq: 2 },
      ),
    })
    .map(compact)
}

/** A filter of any medium and place, in one of these systems. */
export function anyFilter(id: string, systems: string[]): fc.Arbitrary<Filter> {
  return fc
    .record({
      id: fc.constant(id),
      system: fc.constantFrom(...systems),
      place: fc.constantFrom(...FILTER_PLACES),
      nominal: fc.record({
        widthIn: fc.integer({ min: 8, max: 30 }),
        heightIn: fc.integer({ min: 8, max: 36 }),
        depthIn: fc.constantFrom(0.5, 1, 1, 1, 1.5, 2, 3.5, 4, 4.5, 5),
      }),
      medium: fc.constantFrom('fiberglass', 'pleated', 'pleated', 'pleated', 'media', 'washable', 'screen' as const),
      merv: maybe(fc.integer({ min: 1, max: 16 })),
      labelLimitDays: fc.option(fc.integer({ min: 20, max: 400 }), { nil: undefined, freq: 2 }),
    })
    .map((filter) => compact(filter) as Filter)
}
