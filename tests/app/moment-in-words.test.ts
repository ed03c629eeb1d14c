import { expect, test } from 'vitest'
import { minuteInWords } from '@/app/check/brief/minute-words'
import { momentInWords } from '@/app/moment-in-words'

test('a moment is told as days and hours are everywhere, by the clock of the home', () => {
  expect(momentInWords('2026-11-26T03:04:00Z', 'America/Chicago')).toBe('25 November 2026, 21:04')
  expect(momentInWords('2026-07-01T00:30:00Z', 'Europe/Berlin')).toBe('1 July 2026, 02:30')
})

test('a minute of the guide is told alike, and says so where it is UTC', () => {
  const minute = Date.parse('2026-11-26T03:04:00Z') / 60_000
  expect(minuteInWords(minute, 'America/Chicago')).toBe('25 November 2026, 21:04')
  expect(minuteInWords(minute, 'UTC')).toBe('26 November 2026, 03:04 UTC')
})
