import { describe, expect, test } from 'vitest'
import {
  addDays,
  addMonths,
  addYears,
  compareDays,
  dayNumber,
  dayOfYear,
  daysBetween,
  dayText,
  FIRST_DAY,
  isDay,
  LAST_DAY,
} from '@/lib/core/day'

const MS_PER_DAY = 86_400_000

describe('a day', () => {
  test.each(['1901-01-01', '2026-02-28', '2028-02-29', '2099-12-31'])('%s is one', (text) => {
    expect(isDay(text)).toBe(true)
    expect(dayText(dayNumber(text))).toBe(text)
  })

  test.each(['1900-12-31', '2100-01-01', '1500-01-01', '2499-12-31'])(
    '%s is none that doors take, but may be reckoned',
    (text) => {
      expect(isDay(text)).toBe(false)
      expect(dayNumber(text)).toBe(Date.parse(`${text}T00:00:00Z`) / MS_PER_DAY)
      // Asked again, it is the same.
      for (const _ of [1, 2]) expect(dayText(dayNumber(text))).toBe(text)
    },
  )

  test.each([
    '2026-02-29',
    '1900-02-29',
    '2100-02-29',
    '1499-12-31',
    '2500-01-01',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-2-9',
    '2026-02-09 ',
    ' 2026-02-09',
    '12026-02-09',
    '2026-02-091',
    '2026/02/09',
    '20x6-02-09',
    '2026-0x-09',
    '2026-02-0x',
    '',
    'today',
  ])('“%s” is none, and has no number', (text) => {
    expect(isDay(text)).toBe(false)
    expect(() => dayNumber(text)).toThrow(`no day: ${text}`)
  })

  test('has the number of days since 1970, every day from 1901 to 2099', () => {
    const first = Date.UTC(1901, 0, 1) / MS_PER_DAY
    const last = Date.UTC(2099, 11, 31) / MS_PER_DAY
    for (let number = first; number <= last; number += 13) {
      const text = new Date(number * MS_PER_DAY).toJSON().slice(0, 10)
      expect(dayText(number)).toBe(text)
      expect(dayNumber(text)).toBe(number)
    }
    expect([dayText(first), dayText(last)]).toEqual([FIRST_DAY, LAST_DAY])
  })

  test('has none before 1500 and after 2499', () => {
    const [before, after] = [Date.UTC(1499, 11, 31) / MS_PER_DAY, Date.UTC(2500, 0, 1) / MS_PER_DAY]
    for (const outside of [before, after, 0.5, Number.NaN])
      expect(() => dayText(outside)).toThrow(`no day of 1500–2499: ${outside}`)
    expect([dayText(before + 1), dayText(after - 1)]).toEqual(['1500-01-01', '2499-12-31'])
  })
})

describe('counting on', () => {
  test('by days passes months and leap days', () => {
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01')
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29')
    expect(addDays('2026-03-01', -1)).toBe('2026-02-28')
    expect(daysBetween('2026-03-01', '2026-02-28')).toBe(-1)
    expect(daysBetween('2026-01-01', '2027-01-01')).toBe(365)
  })

  test('by months ends with a shorter month, by years on 28 February', () => {
    expect(addMonths('2026-01-31', 1)).toBe('2026-02-28')
    expect(addMonths('2026-01-31', 2)).toBe('2026-03-31')
    expect(addMonths('2026-02-28', 1)).toBe('2026-03-28')
    expect(addMonths('2026-01-15', -2)).toBe('2025-11-15')
    expect(addMonths('2026-12-31', 1)).toBe('2027-01-31')
    expect(addYears('2024-02-29', 1)).toBe('2025-02-28')
    expect(addYears('2024-02-29', 4)).toBe('2028-02-29')
    expect(addYears('2026-06-01', -10)).toBe('2016-06-01')
    // Past the days that doors take.
    expect([addYears('2099-12-31', 10), addDays('1901-01-01', -1)]).toEqual(['2109-12-31', '1900-12-31'])
    expect([addYears('2096-02-29', 4), addMonths('1901-01-31', -11)]).toEqual(['2100-02-28', '1900-02-28'])
    // Asked again, it is the same: months and years are kept apart.
    expect([addMonths('2026-01-31', 1), addYears('2026-01-31', 1)]).toEqual(['2026-02-28', '2027-01-31'])
  })

  test('of months goes on to be right after ten thousand other days', () => {
    for (let i = 0; i < 10_050; i++) {
      const from = dayText(i)
      const [year = 0, month = 0] = from.split('-').map(Number)
      const next = month === 12 ? `${year + 1}-01` : `${year}-${String(month + 1).padStart(2, '0')}`
      expect(addMonths(from, 1).slice(0, 7)).toBe(next)
    }
  })
})

test('the day of the year counts 29 February as 28 February', () => {
  expect(dayOfYear('2026-01-01')).toBe(1)
  expect(dayOfYear('2026-12-31')).toBe(365)
  expect(['2028-02-28', '2028-02-29', '2028-03-01', '2028-12-31'].map(dayOfYear)).toEqual([59, 59, 60, 365])
  expect(['2026-02-28', '2026-03-01'].map(dayOfYear)).toEqual([59, 60])
  // Hundreds of years are no leap years, unless they are four.
  for (const year of [1900, 2000, 2100]) expect([`${year}-03-01`, `${year}-12-31`].map(dayOfYear)).toEqual([60, 365])
})

test('days sort as text does', () => {
  const days = ['2026-11-25', '2025-12-31', '2026-02-03', '2026-11-25']
  expect(days.sort(compareDays)).toEqual(['2025-12-31', '2026-02-03', '2026-11-25', '2026-11-25'])
  expect(compareDays('2026-01-01', '2026-01-01')).toBe(0)
  // Whoever sorts by day and then by name asks for both signs.
  expect(Math.sign(compareDays('2026-01-01', '2026-01-02'))).toBe(-1)
  expect(Math.sign(compareDays('2026-01-02', '2026-01-01'))).toBe(1)
})
