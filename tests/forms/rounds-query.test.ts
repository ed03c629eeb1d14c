import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays, dayNumber, dayText } from '@/lib/core/day'
import { fewestVisits } from '@/lib/core/rounds'
import { calendarOf, parseRoundsQuery, parseWalkQuery, roundsAddress, walkAddress } from '@/lib/forms/rounds-query'

function parameters(address: string): Record<string, string | string[]> {
  const { searchParams } = new URL(address, 'http://localhost')
  return Object.fromEntries(
    [...new Set(searchParams.keys())].map((name) => {
      const values = searchParams.getAll(name)
      return [name, values.length === 1 ? (values[0] ?? '') : values]
    }),
  )
}

test('weekdays and spans are closed, both ends of a span included', () => {
  const { query, faults } = parseRoundsQuery({
    off: ['0', '6'],
    closed: '2026-12-24 to 2026-12-26, 2027-01-01',
    notice: '2',
  })
  const { isClosed, noticeDays } = calendarOf(query)
  const closed = (day: string) => isClosed?.(dayNumber(day))
  expect(faults).toEqual([])
  expect(noticeDays).toBe(2)
  // 2026-11-28 is a Saturday, the day after it a Sunday.
  expect(['2026-11-28', '2026-11-29', '2026-12-24', '2026-12-26', '2027-01-01'].map(closed)).toEqual(
    Array(5).fill(true),
  )
  expect(['2026-11-27', '2026-11-30', '2026-12-23', '2026-12-28'].map(closed)).toEqual(Array(4).fill(false))
})

test('a week without an open day, more than a year closed, and words for days are each refused', () => {
  const said = (params: Record<string, string | string[]>) => parseRoundsQuery(params).faults.map(({ path }) => path)
  expect(said({ off: ['0', '1', '2', '3', '4', '5', '6'] })).toEqual(['off'])
  expect(said({ closed: '2026-01-01 to 2027-06-01' })).toEqual(['closed'])
  expect(said({ closed: 'Christmas', notice: 'soon' })).toEqual(['notice', 'closed'])
  expect(said({ closed: '2026-12-26 to 2026-12-24' })).toEqual(['closed'])
})

test('with one weekday open and many of its days closed, a round falls on the first that is open', () => {
  // 2026-11-27 is a Friday, day 5 of a week.
  const fridays = Array.from({ length: 180 }, (_, week) => addDays('2026-11-27', 7 * week))
  for (const many of [0, 1, 104, 105, 180]) {
    const closed = fridays.slice(0, many).join(',')
    const { query, faults } = parseRoundsQuery({ off: ['0', '1', '2', '3', '4', '6'], closed })
    expect(faults).toEqual([])
    // As early as it can begin: the day after a Friday that is over.
    const on = dayNumber('2026-11-21')
    const visits = fewestVisits([{ earliest: on, due: on, latest: on + 3 }], on, calendarOf(query))
    expect(visits.map((visit) => dayText(visit.on))).toEqual([addDays('2026-11-27', 7 * many)])
  }
})

test('closed days in more signs than are read are refused, not cut', () => {
  const fridays = Array.from({ length: 190 }, (_, week) => addDays('2026-11-27', 7 * week)).join(',')
  expect(parseRoundsQuery({ closed: fridays }).faults.map(({ path }) => path)).toEqual(['closed'])
  // Cut after a comma, what is left could be read.
  const early = `${fridays.slice(0, 1989)}           ,2027-01-01`
  expect(parseRoundsQuery({ closed: early }).faults.map(({ path }) => path)).toEqual(['closed'])
})

test('whatever stands in an address, rounds can be planned, and the address of it means the same', () => {
  const anything = fc.dictionary(
    fc.constantFrom('days', 'notice', 'off', 'closed', 'building', 'page'),
    fc.oneof(fc.string(), fc.constantFrom('0', '3', '30', '2026-12-24'), fc.array(fc.constantFrom('0', '1', '6'))),
  )
  fc.assert(
    fc.property(anything, (params) => {
      const { query } = parseRoundsQuery(params)
      const again = parseRoundsQuery(parameters(roundsAddress(query))).query
      expect({ ...again, closedText: again.closedText.trim() }).toEqual({
        ...query,
        closedText: query.closedText.trim(),
      })
    }),
  )
})

test('a walk is of a building or of one home, and of nothing else', () => {
  const walk = { doer: 'technician', on: '2026-12-01', building: 'Élm Row & Co' } as const
  expect(parseWalkQuery(parameters(walkAddress(walk)))).toEqual(walk)
  expect(parseWalkQuery({ doer: 'resident', on: '2026-12-01' })).toBeNull()
  expect(parseWalkQuery({ doer: 'anyone', on: '2026-12-01', home: 'x' })).toBeNull()
})
