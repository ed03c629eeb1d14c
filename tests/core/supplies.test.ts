import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Filter, Household } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { bareHome, HALL } from '../support/plan-of'

const ON = '2026-11-25'

/** A home whose filters hardly load: each is due a printed limit after its change. */
function home(filters: Partial<Filter>[], changedOn = '2026-11-01', id = 'home'): Household {
  const all = filters.map((change, i) => ({ ...HALL, id: `f${i}`, ...change }))
  return bareHome({
    id,
    systems: [{ id: 'main', name: 'Main', delivery: 'ducted' }],
    filters: all,
    records: all.map(({ id: filter }) => ({ on: changedOn, kind: 'filter-changed', filter })),
  })
}

function suppliesOf(...homes: Household[]) {
  return plan(homes, tables, ON).supplies
}

describe('what is to be bought in twelve months', () => {
  test('is one for each change in turn, the last day of the months not included', () => {
    // Changed on 1 November: due on 31 December, 1 March, 30 April, 29 June, 28 August, 27 October.
    expect(suppliesOf(home([{ labelLimitDays: 60 }]))).toEqual([
      { size: '16x25x1', medium: 'pleated', merv: 8, count: 6 },
    ])
    // A year after 25 November 2025 is just outside.
    expect(suppliesOf(home([{ labelLimitDays: 365 }], '2026-11-25'))).toEqual([])
    expect(suppliesOf(home([{ labelLimitDays: 365 }], '2026-11-24'))).toMatchObject([{ count: 1 }])
  })

  test('counts what is overdue today, and goes on from there', () => {
    // Overdue since long: today, and every 100 days after it: three more.
    expect(suppliesOf(home([{ labelLimitDays: 100 }], '2026-01-01'))).toMatchObject([{ count: 4 }])
  })

  test('adds up over filters and homes of one size, medium and rating', () => {
    const one = home([{ labelLimitDays: 100 }, { labelLimitDays: 100 }], '2026-11-25', 'one')
    const two = home([{ labelLimitDays: 200 }], '2026-11-25', 'two')
    expect(suppliesOf(one, two)).toEqual([{ size: '16x25x1', medium: 'pleated', merv: 8, count: 7 }])
  })

  test('is in order of size, medium and rating; what is washed is not bought', () => {
    const large = { widthIn: 20, heightIn: 25, depthIn: 1 }
    const kinds: Partial<Filter>[] = [
      { nominal: large },
      { merv: 13 },
      { merv: 8 },
      { medium: 'fiberglass', merv: undefined },
      { medium: 'washable', merv: undefined },
      { medium: 'screen', merv: undefined },
    ]
    for (const entered of [kinds, kinds.toReversed()])
      expect(suppliesOf(home(entered)).map(({ size, medium, merv }) => [size, medium, merv])).toEqual([
        ['16x25x1', 'fiberglass', null],
        ['16x25x1', 'pleated', 8],
        ['16x25x1', 'pleated', 13],
        ['20x25x1', 'pleated', 8],
      ])
  })

  test('puts what has no rating before what has one, of one size and medium', () => {
    const kinds: Partial<Filter>[] = [4, undefined, 5].map((merv) => ({ medium: 'fiberglass', merv }))
    for (const entered of [kinds, kinds.toReversed()])
      expect(suppliesOf(home(entered)).map(({ merv }) => merv)).toEqual([null, 4, 5])
  })

  test('takes a rating that nobody knows for MERV 8, where its kind has ratings', () => {
    const unknown: Partial<Filter>[] = [{ merv: undefined }, { medium: 'media', merv: undefined }]
    expect(suppliesOf(home(unknown)).map(({ medium, merv }) => [medium, merv])).toEqual([
      ['media', 8],
      ['pleated', 8],
    ])
  })
})
