import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber, dayText, FIRST_DAY, LAST_DAY } from '@/lib/core/day'
import { eventFactors } from '@/lib/core/dust'
import { DUST_EVENT_KINDS, type Household, type System } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'
import { parseHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from '../support/a-household'
import { cpuTime } from '../support/cpu-time'

const ON = '2026-11-25'
const SLOW = { timeout: 60_000 }
// As many as a file has room for.
const MANY = 100_000

const anySpan = fc.tuple(fc.integer({ min: 100, max: 160 }), fc.nat(30)).map(([from, more]) => ({
  from: dayText(from),
  to: dayText(from + more),
}))

test('the dust of a day is that of all events which hold on it, multiplied, wherever one begins to ask', () => {
  const event = fc.tuple(fc.constantFrom(...DUST_EVENT_KINDS), anySpan).map(([kind, span]) => ({ kind, ...span }))
  fc.assert(
    fc.property(
      fc.array(event, { maxLength: 8 }),
      fc.integer({ min: 90, max: 150 }),
      fc.nat(60),
      (events, from, count) => {
        const factors = eventFactors(events, { from, count }, tables.dustEvents)
        expect(factors).toHaveLength(count)
        factors.forEach((factor, i) => {
          const holding = events.filter((one) => one.from <= dayText(from + i) && dayText(from + i) <= one.to)
          expect(factor).toBeCloseTo(
            holding.reduce((product, { kind }) => product * tables.dustEvents[kind].value, 1),
            6,
          )
        })
      },
    ),
    { seed: 21 },
  )
})

test('of several spells on a day the one that asks most counts, cold and hot each of its own', () => {
  const spell = fc
    .tuple(fc.constantFrom('hot' as const, 'cold' as const), anySpan, fc.integer({ min: 0, max: 40 }))
    .map(([kind, span, more]) =>
      kind === 'hot' ? { kind, ...span, highF: 70 + more, lowF: 66 } : { kind, ...span, highF: 40, lowF: 40 - more },
    )
  const hoursOf = (weather: Household['weather']) => {
    const home = aHousehold({ weather, readings: [], dustEvents: [] })
    return systemDays(home, home.systems[0] as System, dayNumber(ON), tables, new Profiles(tables.figures)).hoursOn
  }
  fc.assert(
    fc.property(fc.array(spell, { minLength: 1, maxLength: 6 }), (spells) => {
      const all = hoursOf(spells)
      const each = spells.map((one) => hoursOf([one]))
      for (let day = 95; day < 195; day++) {
        expect(all(day).heat).toBe(Math.max(...each.map((hours) => hours(day).heat)))
        expect(all(day).cool).toBe(Math.max(...each.map((hours) => hours(day).cool)))
      }
    }),
    { seed: 22, numRuns: 40 },
  )
})

/** A home as the reader of files gives it. */
function accepted(home: Household): Household {
  const read = parseHouseholdFile(JSON.stringify({ plenum: 1, households: [home] }), ON)
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.households[0] as Household
}

const ALWAYS = { from: FIRST_DAY, to: LAST_DAY }
const SHORT = { from: '2026-10-01', to: '2026-10-02' }

test.each([ALWAYS, SHORT])(
  'a home with as many dusty times as a file has room for, $from to $to, has a plan in time',
  SLOW,
  (span) => {
    const dustEvents = Array.from({ length: MANY }, () => ({ kind: 'renovation' as const, ...span }))
    for (const on of ['2026-09-20', '2026-10-20']) {
      const home = accepted(aHousehold({ dustEvents, records: [{ on, kind: 'filter-changed', filter: 'hall' }] }))
      const before = cpuTime()
      const { items, workings } = planHousehold(home, tables, ON)
      expect(cpuTime() - before).toBeLessThan(10_000)
      expect(items.find(({ subject }) => subject === 'hall')?.due).toMatch(/^202\d-\d\d-\d\d$/)
      // A number, which so much dust times itself is not.
      expect(workings[0]?.loadedFraction).toBeLessThan(1e9)
    }
  },
)

test('a home with as many cold times as a file has room for has a plan in time', SLOW, () => {
  const weather = Array.from({ length: MANY - 20_000 }, (_, i) => ({
    kind: 'cold' as const,
    ...ALWAYS,
    highF: 10,
    lowF: -(i % 60),
  }))
  const home = accepted(aHousehold({ weather, dustEvents: [] }))
  const before = cpuTime()
  expect(planHousehold(home, tables, ON).items.length).toBeGreaterThan(0)
  expect(cpuTime() - before).toBeLessThan(10_000)
})
