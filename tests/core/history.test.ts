import { describe, expect, test } from 'vitest'
import { dayNumber } from '@/lib/core/day'
import { historyOf } from '@/lib/core/history'
import type { LogRecord, Medium } from '@/lib/core/household'

function changed(on: string, filter = 'hall', more: Partial<LogRecord> = {}): LogRecord {
  return { on, kind: 'filter-changed', filter, ...more } as LogRecord
}

function done(on: string, task: string, subject = 'hall'): LogRecord {
  return { on, kind: 'service-done', task, subject } as LogRecord
}

describe('the history of a filter', () => {
  test('holds its own changes and looks by day, in whatever order they were entered', () => {
    const { filter } = historyOf({
      records: [
        changed('2026-03-01'),
        { on: '2026-04-10', kind: 'filter-looked', filter: 'hall', light: 'half' },
        changed('2026-01-01', 'hall', { light: 'dark' }),
        changed('2026-02-01', 'den', { light: 'clear' }),
        { on: '2026-02-20', kind: 'filter-looked', filter: 'hall' },
      ],
    })
    expect(filter('hall').changes.map(({ on }) => on)).toEqual(['2026-01-01', '2026-03-01'].map(dayNumber))
    expect(filter('hall').looks).toEqual([
      { on: dayNumber('2026-01-01'), light: 'dark' },
      { on: dayNumber('2026-02-20'), light: undefined },
      { on: dayNumber('2026-04-10'), light: 'half' },
    ])
    expect(filter('den').changes).toHaveLength(1)
    expect(filter('gone')).toEqual({ changes: [], looks: [] })
  })

  test('takes a task done on it for a change or a look', () => {
    const { filter, lastDone } = historyOf({
      records: [
        done('2026-01-01', 'change-filter'),
        done('2026-02-01', 'wash-filter'),
        done('2026-03-01', 'look-at-filter'),
      ],
    })
    expect(filter('hall').changes.map(({ on }) => on)).toEqual(['2026-01-01', '2026-02-01'].map(dayNumber))
    expect(filter('hall').looks).toEqual([{ on: dayNumber('2026-03-01') }])
    expect(lastDone('change-filter', 'hall')).toBeNull()
  })

  test('of two changes on one day has the one that says nothing first, then by medium and rating', () => {
    const fitted = (medium: Medium, merv?: number) =>
      changed('2026-01-01', 'hall', { fitted: { medium, merv } } as Partial<LogRecord>)
    const records = [
      fitted('pleated', 8),
      fitted('media', 11),
      changed('2026-01-01'),
      fitted('pleated', 11),
      fitted('pleated'),
    ]
    for (const entered of [records, records.toReversed()])
      expect(
        historyOf({ records: entered })
          .filter('hall')
          .changes.map(({ fitted: f }) => f && [f.medium, f.merv]),
      ).toEqual([undefined, ['media', 11], ['pleated', undefined], ['pleated', 11], ['pleated', 8]])
  })
})

test('a task was last done on the latest of its days, by task and subject', () => {
  const { lastDone } = historyOf({
    records: [
      done('2026-05-01', 'alarm-test', 'a'),
      done('2026-06-01', 'alarm-test', 'a'),
      done('2026-04-01', 'alarm-test', 'a'),
      done('2026-07-01', 'alarm-test', 'b'),
      done('2026-08-01', 'alarm-replace', 'a'),
    ],
  })
  expect(lastDone('alarm-test', 'a')).toBe(dayNumber('2026-06-01'))
  expect(lastDone('alarm-test', 'b')).toBe(dayNumber('2026-07-01'))
  expect(lastDone('alarm-replace', 'a')).toBe(dayNumber('2026-08-01'))
  expect(lastDone('alarm-replace', 'b')).toBeNull()
})
