import { describe, expect, test } from 'vitest'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { addDays } from '@/lib/core/day'
import { plan } from '@/lib/core/plan'
import { parseHouseholdFile, writeHouseholdFile } from '@/lib/forms/household-file'

describe('the sample', () => {
  test('is a household file without fault on every day from 2026 to 2028', () => {
    for (let day = '2026-01-01'; day <= '2028-12-31'; day = addDays(day, 1)) {
      const { households } = sampleFile(day)
      expect(parseHouseholdFile(writeHouseholdFile(households), day), day).toEqual({ ok: true, households })
    }
  }, 60_000)

  test('shows an owner with a furnace, one with heat pumps and a renter', () => {
    const { households } = sampleFile(SAMPLE_DAY)
    expect(households.map(({ tenure }) => tenure)).toEqual(['own', 'own', 'rent'])
    expect(households.flatMap(({ systems }) => systems.map(({ heat }) => heat?.source))).toEqual([
      'gas-furnace',
      'heat-pump',
      'heat-pump',
      'electric-furnace',
    ])
    expect(new Set(households.flatMap(({ filters }) => filters.map(({ place }) => place)))).toContain('ductless-head')
    expect(households.every(({ since }) => since !== undefined)).toBe(true)
  })

  test('keeps the distance of every record to the day it is shown on', () => {
    const [before] = sampleFile(SAMPLE_DAY).households
    const [after] = sampleFile(addDays(SAMPLE_DAY, 100)).households
    expect(after?.records.map(({ on }) => on)).toEqual(before?.records.map(({ on }) => addDays(on, 100)))
  })
})

test('the sample shows a filter overdue, filters due soon and a ductless head, and not everything at once', () => {
  const { households } = sampleFile(SAMPLE_DAY)
  const items = plan(households, tables, SAMPLE_DAY).households.flatMap(({ id, items }) =>
    items.map(({ task, subject, state, basis }) => ({ home: id, task, subject, state, basis })),
  )
  expect(items).toContainEqual({
    home: 'wrenfield-road',
    task: 'change-filter',
    subject: 'hall',
    state: 'overdue',
    basis: 'loading',
  })
  expect(items).toContainEqual({
    home: 'cove-lane',
    task: 'change-filter',
    subject: 'closet',
    state: 'soon',
    basis: 'calendar',
  })
  expect(items).toContainEqual({
    home: 'cove-lane',
    task: 'wash-filter',
    subject: 'study-head',
    state: 'later',
    basis: 'calendar',
  })
  expect(items).toContainEqual({
    home: 'marigold-2b',
    task: 'change-filter',
    subject: 'ceiling',
    state: 'soon',
    basis: 'label',
  })
  const overdue = items.filter(({ state }) => state === 'overdue')
  expect(overdue.map(({ home, task }) => `${home} ${task}`).toSorted()).toEqual([
    'wrenfield-road change-filter',
    'wrenfield-road heating-service',
  ])
})
