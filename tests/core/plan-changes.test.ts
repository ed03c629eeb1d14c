import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Household } from '@/lib/core/household'
import { planChanges } from '@/lib/core/plan-changes'
import { aHousehold } from '../support/a-household'
import { itemOf } from '../support/plan-of'

const ON = '2026-11-25'

function changes(before: Household, after: Household) {
  return planChanges(before, after, tables, ON)
}

/** A home whose alarm ends on this day, with alarms of other days beside it. */
function withAlarms(...ends: [id: string, endOfLife: string][]): Household {
  const devices = ends.map(([id, endOfLife]) => ({ id, kind: 'co-alarm' as const, made: '2021-03-01', endOfLife }))
  return aHousehold({ devices })
}

test('the same home changes no date', () => {
  expect(changes(aHousehold(), aHousehold())).toEqual([])
  // Nor does another name, though the plan is made anew.
  expect(changes(aHousehold(), aHousehold({ name: 'Another' }))).toEqual([])
})

test('what moves is told with its day before and after, and nothing else is', () => {
  const [before, after] = [withAlarms(['co1', '2031-03-01']), withAlarms(['co1', '2029-06-15'])]
  expect(changes(before, after)).toEqual([
    { task: 'alarm-replace', subject: 'carbon monoxide alarm', before: '2031-03-01', after: '2029-06-15' },
  ])
})

test('a filter of more dust is due sooner, named as the home now names it', () => {
  const [before, after] = [aHousehold({ pets: 0 }), aHousehold({ pets: 3 })]
  const due = (home: Household) => itemOf(home, 'change-filter', ON)?.due
  const change = changes(before, after).find(({ task }) => task === 'change-filter')
  expect(change).toEqual({ task: 'change-filter', subject: 'wall grille', before: due(before), after: due(after) })
})

test('what comes has no day before, what goes none after, under the name it had', () => {
  const [one, other] = [withAlarms(['co1', '2031-03-01']), aHousehold({ devices: [] })]
  const ends = { task: 'alarm-replace', subject: 'carbon monoxide alarm' }
  expect(changes(one, other)).toContainEqual({ ...ends, before: '2031-03-01', after: null })
  expect(changes(other, one)).toContainEqual({ ...ends, before: null, after: '2031-03-01' })
  for (const all of [changes(one, other), changes(other, one)])
    for (const { before, after } of all) expect(before === after).toBe(false)
})

test('they stand by the day that will hold, of what goes by the day that held', () => {
  const before = withAlarms(['a', '2028-01-01'], ['b', '2029-01-01'], ['c', '2030-01-01'])
  const after = withAlarms(['a', '2029-06-01'], ['c', '2027-06-01'], ['d', '2028-06-01'])
  const ends = (from: Household, to: Household) =>
    changes(from, to)
      .filter(({ task }) => task === 'alarm-replace')
      .map((one) => [one.before, one.after])
  expect(ends(before, after)).toEqual([
    ['2030-01-01', '2027-06-01'],
    [null, '2028-06-01'],
    ['2029-01-01', null],
    ['2028-01-01', '2029-06-01'],
  ])
  expect(ends(after, before)).toEqual([
    ['2029-06-01', '2028-01-01'],
    ['2028-06-01', null],
    [null, '2029-01-01'],
    ['2027-06-01', '2030-01-01'],
  ])
})
