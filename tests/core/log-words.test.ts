import { expect, test } from 'vitest'
import type { LogRecord } from '@/lib/core/household'
import {
  detailsInWords,
  doorInWords,
  LOG_KINDS,
  logKindInWords,
  recordInWords,
  subjectOfRecord,
  taskOfRecord,
} from '@/lib/core/log-words'

const ON = { on: '2026-11-20' }
const CHANGED = { ...ON, kind: 'filter-changed', filter: 'hall' } as const
const LOOKED = { ...ON, kind: 'filter-looked', filter: 'den' } as const
const SERVED = { ...ON, kind: 'service-done', task: 'heating-service', subject: 'main' } as const

test.each<[words: string, task: string, subject: string, record: LogRecord]>([
  ['Filter changed', 'change-filter', 'hall', CHANGED],
  ['Filter looked at', 'look-at-filter', 'den', LOOKED],
  ['Heating service done', 'heating-service', 'main', SERVED],
  ['Filter washed', 'wash-filter', 'head', { ...SERVED, task: 'wash-filter', subject: 'head' }],
])('“%s” answers %s of %s', (words, task, subject, record) => {
  expect([recordInWords(record), taskOfRecord(record), subjectOfRecord(record)]).toEqual([words, task, subject])
})

test('what else was written down is told: the light, what went in, and who did it', () => {
  const told: [details: string[], record: LogRecord][] = [
    [[], CHANGED],
    [['Hardly any light comes through'], { ...CHANGED, light: 'dark' }],
    [['pleated, MERV 11 went in'], { ...CHANGED, fitted: { medium: 'pleated', merv: 11 } }],
    [
      ['Light comes through all over', 'fiberglass went in'],
      { ...CHANGED, light: 'clear', fitted: { medium: 'fiberglass' } },
    ],
    [[], LOOKED],
    [['Light comes through in places'], { ...LOOKED, light: 'half' }],
    [[], SERVED],
    // A landlord reads a renter’s log too, and would take a “you” for himself.
    [['done by the people of the home'], { ...SERVED, by: 'resident' }],
    [['done by a licensed technician'], { ...SERVED, by: 'technician' }],
  ]
  for (const [details, record] of told) expect(detailsInWords(record)).toEqual(details)
})

test('every kind of line and every door has words of its own', () => {
  const kinds = LOG_KINDS.map(logKindInWords)
  const doors = (['page', 'file', 'link', 'mail', 'program', 'command'] as const).map(doorInWords)
  for (const words of [kinds, doors]) {
    expect(new Set(words).size).toBe(words.length)
    expect(words.every((each) => each.length > 5)).toBe(true)
  }
})
