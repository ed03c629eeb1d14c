import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayNumber } from '@/lib/core/day'
import { RUNS } from '@/lib/core/run-rows'
import { type Slot, slotsOf, totalOf, truthOf, understood, wall, ZONE } from '../../support/thermostat/an-export'

/** How a stamp may be written: text, and whether it stands in the home's zone or in UTC. */
const two = (n: number) => String(n).padStart(2, '0')
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
const offsetOf = (at: number) => {
  const w = wall(at, ZONE)
  return (Date.UTC(Number(w.year), Number(w.month) - 1, Number(w.day), w.hour, Number(w.minute)) / 1000 - at) / 60
}
const half = (hour: number, minute: string) => `${hour % 12 || 12}:${minute} ${hour < 12 ? 'AM' : 'PM'}`

const STAMPS: Record<string, { zone: 'home' | 'utc'; write: (at: number) => string }> = {
  'ISO with an offset': {
    zone: 'home',
    write: (at) => {
      const { year, month, day, hour, minute } = wall(at, ZONE)
      const offset = offsetOf(at)
      return `${year}-${month}-${day}T${two(hour)}:${minute}:00-${two(-offset / 60)}:00`
    },
  },
  'ISO in UTC with its Z': { zone: 'home', write: (at) => new Date(at * 1000).toISOString() },
  'UTC without a sign of it': {
    zone: 'utc',
    write: (at) => new Date(at * 1000).toISOString().slice(0, 16).replace('T', ' '),
  },
  'seconds since 1970': { zone: 'home', write: (at) => String(at) },
  'milliseconds since 1970': { zone: 'utc', write: (at) => String(at * 1000) },
  'year first, wall clock': {
    zone: 'home',
    write: (at) => {
      const { year, month, day, hour, minute } = wall(at, ZONE)
      return `${year}/${month}/${day} ${two(hour)}:${minute}`
    },
  },
  'month first, twelve hours': {
    zone: 'home',
    write: (at) => {
      const { year, month, day, hour, minute } = wall(at, ZONE)
      return `${Number(month)}/${Number(day)}/${year} ${half(hour, minute)}`
    },
  },
  'day first with points': {
    zone: 'home',
    write: (at) => {
      const { year, month, day, hour, minute } = wall(at, ZONE)
      return `${day}.${month}.${year} ${two(hour)}:${minute}:00`
    },
  },
  'the month as a word': {
    zone: 'home',
    write: (at) => {
      const { year, month, day, hour, minute } = wall(at, ZONE)
      return `${MONTHS[Number(month) - 1]} ${Number(day)}, ${year} ${half(hour, minute)}`
    },
  },
}

const DELIMITERS = { comma: ',', semicolon: ';', tab: '\t', bar: '|' }
const UNITS = { sec: 1, min: 60, hours: 3600, percent: 0 }

const plansArbitrary = fc.record({
  from: fc.integer({ min: dayNumber('2025-01-01'), max: dayNumber('2026-09-01') }),
  days: fc.integer({ min: 14, max: 24 }),
  step: fc.constantFrom(300, 900, 1800, 3600),
  seed: fc.array(fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 10 }))), { minLength: 5, maxLength: 40 }),
})
type Plan = typeof plansArbitrary extends fc.Arbitrary<infer T> ? T : never

function slotsBy({ from, days, step, seed }: Plan): Slot[] {
  return slotsOf(from, days, {
    step,
    runs: (i) => {
      const [h = 0, c = 0, f = 0] = seed[i % seed.length] ?? []
      // Heating or cooling, never both; the blower runs at least as long.
      const [heat, cool] = i % 97 < 50 ? [(h * step) / 10, 0] : [0, (c * step) / 10]
      return [heat, cool, Math.max(heat, cool, (f * step) / 10)]
    },
  })
}

function near(got: number, truth: number, what: string): void {
  expect(Math.abs(got - truth), `${what}: ${got}, but it was ${truth}`).toBeLessThanOrEqual(0.001 * truth + 0.05)
}

function written(
  slots: readonly Slot[],
  step: number,
  stamp: string,
  delimiter: string,
  unit: keyof typeof UNITS,
): string[] {
  const figure = (seconds: number) =>
    unit === 'percent'
      ? String(Math.round((1000 * seconds) / step) / 10)
      : String(Number((seconds / UNITS[unit]).toFixed(6)))
  const write = STAMPS[stamp]?.write ?? String
  return slots.map(({ at, heat, cool, fan }) => {
    const cell = delimiter === ',' && write(at).includes(',') ? `"${write(at)}"` : write(at)
    return [cell, '71.5', figure(heat), figure(cool), figure(fan)].join(delimiter)
  })
}

const headOf = (delimiter: string, unit: string) =>
  ['Moment', 'Room temperature', `Heating ran (${unit})`, `Cooling ran (${unit})`, `Blower ran (${unit})`].join(
    delimiter,
  )

for (const stamp of Object.keys(STAMPS))
  test(`run times with ${stamp} come to the true totals, in any order of rows, twice over, with any delimiter and unit`, async () => {
    await fc.assert(
      fc.asyncProperty(
        plansArbitrary,
        fc.constantFrom(...Object.values(DELIMITERS)),
        fc.constantFrom(...(Object.keys(UNITS) as (keyof typeof UNITS)[])),
        fc.integer({ min: 1, max: 1000 }),
        fc.boolean(),
        async (plan, delimiter, unit, turn, isTwice) => {
          const slots = slotsBy(plan)
          const rows = written(slots, plan.step, stamp, delimiter, unit)
          const mixed = [...rows]
          for (let i = mixed.length - 1, r = turn; i > 0; i--) {
            r = (r * 1103515245 + 12345) % 2147483648
            const j = r % (i + 1)
            ;[mixed[i], mixed[j]] = [mixed[j] as string, mixed[i] as string]
          }
          const file = [headOf(delimiter, unit), ...mixed, ...(isTwice ? rows : [])].join('\n')
          const got = await understood(file, { zone: STAMPS[stamp]?.zone ?? 'home' })
          expect(got.faults).toEqual([])
          const truth = truthOf(slots)
          const total = totalOf(got)
          for (const run of RUNS) near(total[run], truth[run], `${run} (${rows[0]})`)
          if (isTwice) expect(got.notes.join(' ')).toMatch(/repeat/)
        },
      ),
      { numRuns: 6, endOnFailure: true },
    )
  })
