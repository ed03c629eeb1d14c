import fc from 'fast-check'
import type { YearFacts } from '@/app/parts/year-marks'
import { addDays } from '@/lib/core/day'
import { TASKS } from '@/lib/core/household'

const FROM = '2026-09-01'

const anyDayNear = fc.integer({ min: -40, max: 400 }).map((days) => addDays(FROM, days))
const anyHours = fc.array(fc.double({ min: 0, max: 24, noNaN: true }), { minLength: 365, maxLength: 365 })
const anyFlatHours = fc
  .double({ min: 0, max: 24, noNaN: true })
  .map((hours) => Array.from({ length: 365 }, () => hours))

const anyEvent = fc.record({
  on: anyDayNear,
  kind: fc.constantFrom('changed' as const, 'looked' as const, 'forecast' as const),
  task: fc.constantFrom('change-filter' as const, 'wash-filter' as const),
})

const anyWindow = fc
  .record({
    task: fc.constantFrom(...TASKS),
    earliest: anyDayNear,
    long: fc.integer({ min: 0, max: 120 }),
    due: fc.integer({ min: 0, max: 120 }),
    doer: fc.constantFrom('resident' as const, 'technician' as const),
  })
  .map(({ task, earliest, long, due, doer }) => ({
    task,
    subject: 'main',
    doer,
    earliest,
    due: addDays(earliest, Math.min(due, long)),
    latest: addDays(earliest, long),
  }))

/** Years fuller and emptier than any home's: up to eight filters, forty events each, twelve windows. */
export const anyYearFacts: fc.Arbitrary<YearFacts> = fc.record({
  year: fc.record({
    system: fc.constant('main'),
    name: fc.constant('Main system'),
    from: fc.constant(FROM),
    heatHours: fc.oneof(anyFlatHours, anyHours, fc.constant(Array.from({ length: 365 }, () => 0))),
    coolHours: fc.oneof(anyFlatHours, fc.constant(Array.from({ length: 365 }, () => 0))),
    filters: fc.array(fc.record({ filter: fc.string(), events: fc.array(anyEvent, { maxLength: 40 }) }), {
      maxLength: 5,
    }),
    windows: fc.array(anyWindow, { maxLength: 12 }),
  }),
  on: anyDayNear,
  names: fc.constantFrom(
    () => 'wall grille',
    () => 'media cabinet beside the furnace, Upstairs system of the east wing',
  ),
  loaded: fc.oneof(fc.constant(null), fc.double({ min: 0, max: 3, noNaN: true })).map((share) => () => share),
})
