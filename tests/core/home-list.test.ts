import fc from 'fast-check'
import { expect, test } from 'vitest'
import { HOME_SORTS, HOMES_A_PAGE, type ListedHome, pageOfHomes, pressingItem, searchText } from '@/lib/core/home-list'
import { type Item, STATES, type State } from '@/lib/core/plan-types'
import { homesAddress, parseHomesQuery } from '@/lib/forms/homes-query'

function item(state: State, due: string): Item {
  return {
    task: 'change-filter',
    subject: 'f',
    doer: 'resident',
    earliest: due,
    due,
    latest: due,
    basis: 'loading',
    state,
    reasons: [],
  }
}

function home(name: string, building: string | null, pressing: Item | null = null): ListedHome {
  return {
    id: `${building} ${name}`,
    name,
    building,
    state: 'open',
    pressing,
    search: searchText(`${name} ${building ?? ''}`),
  }
}

const LATE = item('overdue', '2026-11-01')
const SOON = item('soon', '2026-12-01')
const HOMES = [
  home('Unit 10', 'Élm Row', SOON),
  home('Unit 9', 'Élm Row', LATE),
  home('Cottage', null),
  home('Unit 1', 'Ash Lane', item('due', '2026-11-20')),
]
const names = (query: Parameters<typeof pageOfHomes>[1]) => pageOfHomes(HOMES, query).homes.map(({ name }) => name)

test('what presses most is overdue before due, and the earlier day before the later', () => {
  expect(pressingItem([SOON, item('overdue', '2026-10-01'), LATE])?.due).toBe('2026-10-01')
  // Of two alike the first of the plan, which has them in its order.
  const [first, second] = [item('due', '2026-11-20'), item('due', '2026-11-20')]
  expect(pressingItem([SOON, first, second])).toBe(first)
  expect(pressingItem([])).toBeNull()
})

test('homes come by building, Unit 9 before Unit 10, and those in no building last', () => {
  expect(names({ sort: 'building', page: 1 })).toEqual(['Unit 1', 'Unit 9', 'Unit 10', 'Cottage'])
  expect(names({ sort: 'pressing', page: 1 })).toEqual(['Unit 9', 'Unit 1', 'Unit 10', 'Cottage'])
  expect(names({ sort: 'name', page: 1 })).toEqual(['Cottage', 'Unit 1', 'Unit 9', 'Unit 10'])
  const rows = ['Mill House', 'Ash Lane', null, 'Élm Row'].map((building, i) => home(`Unit ${i}`, building))
  expect(pageOfHomes(rows, { sort: 'building', page: 1 }).homes.map(({ building }) => building)).toEqual([
    'Ash Lane',
    'Élm Row',
    'Mill House',
    null,
  ])
})

test('by what presses, homes alike stay by name, those with nothing due come after, and closed ones last', () => {
  const homes = [
    { ...home('Shut', 'A'), state: 'closed' as const },
    home('Calm', 'B'),
    home('One', 'C', SOON),
    home('Two', 'D', SOON),
    home('Late', 'E', LATE),
    home('Three', 'F', SOON),
  ]
  const sorted = pageOfHomes(homes, { sort: 'pressing', page: 1 }).homes
  expect(sorted.map(({ name }) => name)).toEqual(['Late', 'One', 'Two', 'Three', 'Calm', 'Shut'])
})

test('every word is searched for in name and building, without case and accents', () => {
  expect(names({ sort: 'building', page: 1, search: ' elm  UNIT ' })).toEqual(['Unit 9', 'Unit 10'])
  expect(names({ sort: 'building', page: 1, search: 'elm cottage' })).toEqual([])
})

test('the counts are those before the state is asked for', () => {
  const page = pageOfHomes(HOMES, { sort: 'building', page: 1, building: 'Élm Row', state: 'soon' })
  expect([page.total, page.found, page.counts]).toEqual([2, 1, { overdue: 1, due: 0, soon: 1, later: 0 }])
  expect(page.homes.map(({ name }) => name)).toEqual(['Unit 10'])
})

test('the pages together hold every home once, in order; one past the end shows the last', () => {
  const many = Array.from({ length: 2 * HOMES_A_PAGE + 1 }, (_, i) => home(`Unit ${i}`, `B ${i % 7}`))
  for (const sort of HOME_SORTS) {
    const pages = [1, 2, 3].map((page) => pageOfHomes(many, { sort, page }))
    expect(pages.map(({ homes }) => homes.length)).toEqual([HOMES_A_PAGE, HOMES_A_PAGE, 1])
    expect(new Set(pages.flatMap(({ homes }) => homes.map(({ id }) => id))).size).toBe(many.length)
    expect(pageOfHomes(many, { sort, page: 99 }).homes).toEqual(pages[2]?.homes)
  }
})

test('an address and what it asks for are the same', () => {
  const text = fc
    .string({ minLength: 1, maxLength: 40 })
    .map((s) => s.trim())
    .filter((s) => s !== '')
  const query = fc.record(
    {
      search: text,
      building: text,
      state: fc.constantFrom(...STATES),
      sort: fc.constantFrom(...HOME_SORTS),
      page: fc.integer({ min: 1, max: 999 }),
    },
    { requiredKeys: ['sort', 'page'] },
  )
  fc.assert(
    fc.property(query, (asked) => {
      const address = new URL(homesAddress(asked), 'http://localhost')
      expect(parseHomesQuery(Object.fromEntries(address.searchParams))).toEqual(asked)
    }),
  )
})

test('whatever stands in an address, a list is shown', () => {
  const anything = fc.dictionary(
    fc.constantFrom('q', 'state', 'sort', 'page', 'building'),
    fc.oneof(fc.string(), fc.array(fc.string())),
  )
  fc.assert(
    fc.property(anything, (params) => {
      expect(pageOfHomes(HOMES, parseHomesQuery(params)).pages).toBe(1)
    }),
  )
})
