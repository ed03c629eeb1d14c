import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays, daysBetween } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { anyCase, anyClimate, anyOn } from '../support/any-household'
import { anyFilter } from '../support/any-system'

const SLOW = { timeout: 60_000 }

/** One system with one filter, changed before `on`; heating, cooling and fan move the same air. */
const anyHome: fc.Arbitrary<{ home: Household; on: string }> = fc
  .tuple(anyOn, anyClimate, anyFilter('hall', ['main']), fc.nat(5), fc.nat(6), fc.nat(50), fc.nat(60), fc.boolean())
  .map(([on, climate, filter, people, pets, minutesPerHour, ago, isPump]) => ({
    on,
    home: {
      ...{ id: 'home', name: 'Home', tenure: 'own', timeZone: 'UTC', units: 'us', climate, people, pets },
      ...{ smoking: false, carpet: false, hardWater: false, vulnerable: false, dustEvents: [], devices: [] },
      ...{ readings: [], records: [{ on: addDays(on, -ago), kind: 'filter-changed', filter: 'hall' }] },
      systems: [
        {
          ...{ id: 'main', name: 'Main', delivery: 'ducted', fan: { mode: 'circulate', minutesPerHour } },
          heat: { source: isPump ? 'heat-pump' : 'gas-furnace' },
          cool: { source: isPump ? 'heat-pump' : 'central-ac' },
          airflowCfm: { heat: 1000, cool: 1000 },
        },
      ],
      filters: [{ ...filter, medium: 'pleated', place: filter.place === 'ventilator' ? 'wall-grille' : filter.place }],
    },
  }))

const DAYS = ['due', 'early', 'late'] as const

function filterItem(home: Household, on: string) {
  const item = plan([home], tables, on).households[0]?.items.find((i) => i.subject === 'hall')
  if (!item) throw new Error('no item for the filter')
  return item
}

/** Checks that a change of the household brings no day of its filter later; at least once it must bring one forward. */
function neverLater(change: (home: Household, more: number) => Household) {
  let sooner = 0
  fc.assert(
    fc.property(anyHome, fc.integer({ min: 1, max: 5 }), ({ home, on }, more) => {
      const [before, after] = [filterItem(home, on), filterItem(change(home, more), on)]
      for (const day of DAYS) expect((after[day] ?? '') <= (before[day] ?? '')).toBe(true)
      if (after.due < before.due) sooner++
    }),
    { seed: 8, numRuns: 100 },
  )
  expect(sooner).toBeGreaterThan(5)
}

describe('a filter never lasts longer', () => {
  test('for more people', SLOW, () => neverLater((home, more) => ({ ...home, people: home.people + more })))
  test('for more pets', SLOW, () => neverLater((home, more) => ({ ...home, pets: home.pets + more })))
  test('for smoking and carpet', SLOW, () => neverLater((home) => ({ ...home, smoking: true, carpet: true })))
  test('for dust in the air for a while', SLOW, () =>
    neverLater((home, more) => {
      const from = home.records[0]?.on ?? ''
      return { ...home, dustEvents: [{ kind: 'smoke', from, to: addDays(from, 20 * more) }] }
    }),
  )
  test('for more hours of the same air', SLOW, () =>
    neverLater((home, more) => ({
      ...home,
      systems: home.systems.map((s) => ({
        ...s,
        fan: {
          mode: 'circulate',
          minutesPerHour: (s.fan?.mode === 'circulate' ? s.fan.minutesPerHour : 0) + 2 * more,
        },
      })),
    })),
  )
})

test('a larger face never fills sooner, alone or beside its like', SLOW, () => {
  let later = 0
  fc.assert(
    fc.property(anyHome, fc.integer({ min: 1, max: 10 }), fc.boolean(), ({ home, on }, inches, isPair) => {
      const twin = home.filters.map((f) => ({ ...f, id: 'den' }))
      const whole = { ...home, filters: [...home.filters, ...(isPair ? twin : [])] }
      const larger = whole.filters.map((f) =>
        f.id === 'hall' ? { ...f, nominal: { ...f.nominal, widthIn: f.nominal.widthIn + inches } } : f,
      )
      const [before, after] = [filterItem(whole, on), filterItem({ ...whole, filters: larger }, on)]
      for (const day of DAYS) expect((after[day] ?? '') >= (before[day] ?? '')).toBe(true)
      if (after.due > before.due) later++
    }),
    { seed: 9, numRuns: 100 },
  )
  expect(later).toBeGreaterThan(5)
})

describe('for any household', () => {
  test('nothing about a filter falls before the day after its change, and its days are in order', SLOW, () => {
    fc.assert(
      fc.property(anyCase, ({ home, on }) => {
        for (const item of plan([home], tables, on).households[0]?.items ?? []) {
          const changes = home.records.filter((r) => r.kind === 'filter-changed' && r.filter === item.subject)
          const last = changes
            .map((r) => r.on)
            .sort()
            .at(-1)
          expect(item.earliest <= item.due && item.due <= item.latest).toBe(true)
          if (last === undefined || !item.lookOn) continue
          for (const day of [item.earliest, item.lookOn, item.early ?? item.due, item.due]) {
            expect(daysBetween(last, day)).toBeGreaterThan(0)
          }
          expect(item.lookOn <= item.due).toBe(true)
          expect((item.early ?? item.due) <= item.due && item.due <= (item.late ?? item.due)).toBe(true)
        }
      }),
      { seed: 10, numRuns: 80 },
    )
  })

  test('the order of records, filters, readings, devices, dust events, systems and homes never matters', SLOW, () => {
    const shuffled = <T>(list: T[]) => fc.shuffledSubarray(list, { minLength: list.length })
    const reordered = anyCase.chain(({ home, on }) =>
      fc
        .record({
          records: shuffled(home.records),
          filters: shuffled(home.filters),
          readings: shuffled(home.readings),
          devices: shuffled(home.devices),
          dustEvents: shuffled(home.dustEvents),
          systems: shuffled(home.systems),
        })
        .map((lists) => ({ home, on, other: { ...home, ...lists } })),
    )
    const neighbour = fc.sample(anyCase, { seed: 11, numRuns: 1 })[0]?.home as Household
    fc.assert(
      fc.property(reordered, ({ home, on, other }) => {
        const left = plan([home, { ...neighbour, id: 'next', records: [], readings: [] }], tables, on)
        const right = plan([{ ...neighbour, id: 'next', records: [], readings: [] }, other], tables, on)
        expect(right.households[1]?.items).toEqual(left.households[0]?.items)
        expect(right.supplies).toEqual(left.supplies)
        expect(right.rounds).toEqual(left.rounds)
      }),
      { seed: 12, numRuns: 80 },
    )
  })
})
