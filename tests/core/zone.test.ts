import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayParts } from '@/lib/core/day-words'
import { daysByZone, instantAt, localDay, localTime, weekdayOf } from '@/lib/core/zone'

test('a clock shows what is usual in its zone, over both changes of the clock', () => {
  expect(localTime('2026-11-25T18:05:00.000Z', 'America/Chicago')).toEqual({ day: '2026-11-25', hour: 12, minute: 5 })
  // 1 November 2026, 2 a.m.: clocks in the United States go back (Energy Policy Act of 2005, first Sunday of November).
  expect(localTime('2026-11-01T06:30:00.000Z', 'America/Chicago').hour).toBe(1)
  expect(localTime('2026-11-01T07:30:00.000Z', 'America/Chicago').hour).toBe(1)
  expect(localTime('2026-03-08T08:00:00.000Z', 'America/Chicago').hour).toBe(3)
  expect(localTime('2026-11-25T06:00:00.000Z', 'America/Chicago').hour).toBe(0)
  expect(localDay('2026-11-25T05:59:00.000Z', 'America/Chicago')).toBe('2026-11-24')
})

test('the weekday is the one that is printed', () => {
  const names = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 47_481 }), (days) => {
      const day = new Date(days * 86_400_000).toISOString().slice(0, 10)
      expect(names[weekdayOf(day)]).toBe(dayParts(day).weekday)
    }),
  )
})

test('the moment of an hour is the first at which a clock there shows it or more, over every change of the clock', () => {
  const zones = ['America/Chicago', 'Antarctica/Troll', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'Pacific/Kiritimati']
  const shown = (at: number, zone: string) => {
    const { day, hour, minute } = localTime(new Date(at).toISOString(), zone)
    return Date.parse(`${day}T00:00:00Z`) + (hour * 60 + minute) * 60_000
  }
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 730 }),
      fc.integer({ min: 0, max: 23 }),
      fc.constantFrom(...zones),
      (days, hour, zone) => {
        const day = new Date(Date.UTC(2026, 0, 1 + days)).toISOString().slice(0, 10)
        const wanted = Date.parse(`${day}T00:00:00Z`) + hour * 3_600_000
        // Every quarter of an hour that it could be, one after the other.
        let first = wanted - 14 * 3_600_000
        while (shown(first, zone) < wanted) first += 15 * 60_000
        expect(instantAt(day, hour, zone)).toBe(new Date(first).toISOString())
      },
    ),
  )
  // Lord Howe's clocks go forward by half an hour, from 2:00 to 2:30: at half past it is past two.
  expect(instantAt('2026-10-04', 2, 'Australia/Lord_Howe')).toBe('2026-10-03T15:30:00.000Z')
  // The last and the first zone to have an hour.
  expect(instantAt('2026-11-25', 9, 'Etc/GMT+12')).toBe('2026-11-25T21:00:00.000Z')
  expect(instantAt('2026-11-25', 9, 'Etc/GMT-14')).toBe('2026-11-24T19:00:00.000Z')
  // Samoa left out 30 December 2011 (International Date Line Act 2011): the day began when the next did.
  for (const hour of [0, 9, 10, 11, 23])
    expect(instantAt('2011-12-30', hour, 'Pacific/Apia')).toBe('2011-12-30T10:00:00.000Z')
})

test('the day of a zone is asked for once, however many homes lie in it', () => {
  const asked: string[] = []
  const dayIn = daysByZone((zone) => {
    asked.push(zone)
    return zone === 'Asia/Kathmandu' ? '2026-11-26' : '2026-11-25'
  })
  const zones = ['America/Chicago', 'Asia/Kathmandu', 'America/Chicago', 'Asia/Kathmandu', 'America/Chicago']
  expect(zones.map(dayIn)).toEqual(['2026-11-25', '2026-11-26', '2026-11-25', '2026-11-26', '2026-11-25'])
  expect(asked).toEqual(['America/Chicago', 'Asia/Kathmandu'])
})
