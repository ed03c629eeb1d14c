import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { periodWindow, sourced, stateOf, taskReason } from '@/lib/core/due'

const { figures } = tables

describe('the state of an item', () => {
  const DUE = 1000
  const LATEST = 1007
  test.each([
    [985, 'later'],
    [986, 'soon'],
    [999, 'soon'],
    [1000, 'due'],
    [1007, 'due'],
    [1008, 'overdue'],
  ])('due on day 1000, at the latest on day 1007, seen on day %i: %s', (on, state) => {
    expect(stateOf(DUE, LATEST, on, figures)).toBe(state)
  })
})

describe('why a task is done', () => {
  test('is said with its mark, and with its source where it has one', () => {
    expect(sourced('It dries out.', 'P', undefined)).toEqual({ say: 'It dries out.', mark: 'P' })
    expect(sourced('It dries out.', 'G', 'EPA')).toEqual({ say: 'It dries out.', mark: 'G', source: 'EPA' })
  })

  test('is one value for all homes, and stays the row’s own', () => {
    const row = { ...Object.values(tables.tasks)[0] } as Parameters<typeof taskReason>[0]
    const first = taskReason(row)
    expect(first.say).toBe(row.reason)
    expect(taskReason(row)).toBe(first)
    expect(taskReason({ ...row, reason: 'Another.' }).say).toBe('Another.')
  })
})

test('a task with a fixed period may be done a quarter of it before, and a tenth after, both rounded down', () => {
  expect(periodWindow(1000, 90)).toEqual({ earliest: 978, due: 1000, latest: 1009 })
  expect(periodWindow(1000, 30)).toEqual({ earliest: 993, due: 1000, latest: 1003 })
})
