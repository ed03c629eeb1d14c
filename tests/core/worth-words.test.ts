import { expect, test } from 'vitest'
import { dayNumber } from '@/lib/core/day'
import type { LookWorth } from '@/lib/core/look-worth'
import { rangeInWords, worthInWords } from '@/lib/core/worth-words'

function worth(change: Partial<LookWorth> = {}): LookWorth {
  const now = { early: 0, due: 0, late: 0 }
  return { now, answers: [], rangeDays: 40, rangeAfterDays: 25.4, isWorthIt: true, isOver: false, ...change }
}

test('a look that is worth it says by how much, one that is not says so or why', () => {
  expect(worthInWords(worth())).toBe(
    'Worth it: a look today would narrow the 40 days in which it may be full by about 15.',
  )
  expect(worthInWords(worth({ rangeDays: 1.2, rangeAfterDays: 0.2, isWorthIt: false }), 'then')).toBe(
    'Not needed: a look then would narrow the 1 day in which it may be full by about 1.',
  )
  expect(worthInWords(worth({ rangeAfterDays: 39.6, isWorthIt: false }))).toContain('hardly narrow')
  expect(worthInWords(worth({ rangeAfterDays: 41 }))).toContain('hardly narrow')
  expect(worthInWords(worth({ rangeDays: 0, rangeAfterDays: 0 }))).toContain(
    'the same for a dustier and a cleaner home',
  )
  expect(worthInWords(worth({ isOver: true }))).toContain('its time is over')
  expect(worthInWords(null, 'then')).toMatch(/^A look then would teach nothing yet/)
})

test('the days in which a filter may be full read as a person says them', () => {
  const say = (early: string, late: string) =>
    rangeInWords({ early: dayNumber(early), late: dayNumber(late) }, '2026-11-25')
  expect(say('2026-11-20', '2026-11-25')).toBe('today')
  expect(say('2026-11-25', '2026-11-25')).toBe('today')
  expect(say('2026-11-28', '2026-11-28')).toBe('on Saturday 28 November')
  expect(say('2026-11-25', '2026-11-28')).toBe('between today and Saturday 28 November')
  expect(say('2026-11-28', '2027-01-04')).toBe('between Saturday 28 November and Monday 4 January 2027')
})
