import { expect, test } from 'vitest'
import { addDays } from '@/lib/core/day'
import { localDay } from '@/lib/core/zone'
import { endOfDay } from '@/lib/data/instant'

// Zones whose clocks change at midnight or near it, by half an hour, by two hours, or not at all; and some usual ones.
const ZONES = [
  ...['Africa/Cairo', 'Africa/Casablanca', 'America/Asuncion', 'America/Chicago', 'America/Havana'],
  ...['America/Nuuk', 'America/Santiago', 'America/Scoresbysund', 'America/St_Johns', 'Antarctica/Troll'],
  ...['Asia/Beirut', 'Asia/Gaza', 'Asia/Tehran', 'Atlantic/Azores', 'Australia/Lord_Howe', 'Europe/London'],
  ...['Pacific/Apia', 'Pacific/Auckland', 'Pacific/Chatham'],
]

test.each(ZONES)('a day in %s ends in the moment in which the next begins, on every day of a year', (zone) => {
  const wrong: string[] = []
  for (let day = '2026-03-01'; day < '2027-04-01'; day = addDays(day, 1)) {
    const end = endOfDay(day, zone)
    const before = localDay(new Date(Date.parse(end) - 1).toISOString(), zone)
    if (before !== day || localDay(end, zone) !== addDays(day, 1)) wrong.push(`${day} ${end}`)
  }
  expect(wrong).toEqual([])
})

test('a day whose midnight is left out ends where the clock jumps; the last day that doors take ends too', () => {
  // Santiago's clocks go from 24:00 on 5 September 2026 to 1:00.
  expect(endOfDay('2026-09-05', 'America/Santiago')).toBe('2026-09-06T04:00:00.000Z')
  expect(endOfDay('2099-12-31', 'UTC')).toBe('2100-01-01T00:00:00.000Z')
})
