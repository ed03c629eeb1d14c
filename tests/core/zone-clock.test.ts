import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayNumber, dayText } from '@/lib/core/day'
import { localTime } from '@/lib/core/zone'
import { zoneClock } from '@/lib/core/zone-clock'

// By hand from the rules of the zones: Chicago goes forward on 8 March 2026 at 2:00 (8:00 UTC) and back on 1 November at
// 2:00 (7:00 UTC); Santiago goes back on 5 April at midnight (3:00 UTC) and forward on 6 September at midnight (4:00).
const clockOf = (zone: string) => zoneClock(zone, dayNumber('2026-01-01'), dayNumber('2026-12-31'))
const chicago = clockOf('America/Chicago')
const santiago = clockOf('America/Santiago')
const wall = (text: string) => Date.parse(`${text}Z`) / 1000
const shown = (utc: number) => new Date(utc * 1000).toISOString().slice(0, 19)
const day = (text: string) => dayNumber(text.slice(0, 10))

describe('the clock of a home', () => {
  test.each([
    ['2026-01-15T12:00:00', '2026-01-15T18:00:00'],
    ['2026-03-08T01:59:59', '2026-03-08T07:59:59'],
    ['2026-03-08T03:00:00', '2026-03-08T08:00:00'],
    ['2026-07-15T12:00:00', '2026-07-15T17:00:00'],
    ['2026-11-01T00:59:59', '2026-11-01T05:59:59'],
    ['2026-11-01T01:30:00', '2026-11-01T06:30:00'],
    ['2026-11-01T02:00:00', '2026-11-01T08:00:00'],
    // Left out: as if the clock had not been put forward yet.
    ['2026-03-08T02:30:00', '2026-03-08T08:30:00'],
  ])('%s in Chicago is %s UTC, whatever was asked before', (local, utc) => {
    for (const before of ['2026-01-10T00:00:00', '2026-07-10T00:00:00', '2026-12-10T00:00:00']) {
      chicago.toUtc(wall(before))
      expect(shown(chicago.toUtc(wall(local)))).toBe(utc)
    }
  })

  test('of an hour that comes twice the second can be asked for', () => {
    expect(shown(chicago.toUtc(wall('2026-11-01T01:30:00'), 1))).toBe('2026-11-01T07:30:00')
    expect(shown(santiago.toUtc(wall('2026-04-04T23:30:00'), 1))).toBe('2026-04-05T03:30:00')
    // What comes once is the same either way.
    expect(shown(chicago.toUtc(wall('2026-11-01T02:30:00'), 1))).toBe('2026-11-01T08:30:00')
    expect(shown(chicago.toUtc(wall('2026-07-01T02:30:00'), 1))).toBe('2026-07-01T07:30:00')
  })

  test('an hour comes twice, or is left out, from its first second to its last', () => {
    const twice = ['00:59:59', '01:00:00', '01:59:59', '02:00:00'].map((time) => wall(`2026-11-01T${time}`))
    expect(twice.map(chicago.isTwice)).toEqual([false, true, true, false])
    expect(twice.map(chicago.isLeftOut)).toEqual([false, false, false, false])
    const leftOut = ['01:59:59', '02:00:00', '02:59:59', '03:00:00'].map((time) => wall(`2026-03-08T${time}`))
    expect(leftOut.map(chicago.isLeftOut)).toEqual([false, true, true, false])
    expect(leftOut.map(chicago.isTwice)).toEqual([false, false, false, false])
    expect([chicago.isTwice(wall('2026-06-01T01:30:00')), chicago.isLeftOut(wall('2026-06-01T01:30:00'))]).toEqual([
      false,
      false,
    ])
  })

  test('a day begins at its midnight, or where the clock was put forward over it', () => {
    const starts = (clock: typeof chicago, days: string[]) => days.map((text) => shown(clock.startOf(day(text))))
    expect(starts(chicago, ['2026-03-08', '2026-03-09', '2026-11-01', '2026-11-02'])).toEqual([
      ...['2026-03-08T06:00:00', '2026-03-09T05:00:00', '2026-11-01T05:00:00', '2026-11-02T06:00:00'],
    ])
    // Havana goes back on 1 November at 1:00 (5:00 UTC) to midnight: of the two midnights the day begins at the first.
    expect(starts(clockOf('America/Havana'), ['2026-11-01', '2026-11-02'])).toEqual([
      ...['2026-11-01T04:00:00', '2026-11-02T05:00:00'],
    ])
    expect(starts(santiago, ['2026-04-05', '2026-09-05', '2026-09-06', '2026-09-07'])).toEqual([
      ...['2026-04-05T04:00:00', '2026-09-05T04:00:00', '2026-09-06T04:00:00', '2026-09-07T03:00:00'],
    ])
  })

  test('a moment is of the day that the clock shows then, whatever was asked before', () => {
    for (const before of ['2026-01-10T00:00:00', '2026-07-10T00:00:00', '2026-12-10T00:00:00'])
      for (const [clock, moment, on] of [
        [chicago, '2026-03-08T05:59:59', '2026-03-07'],
        [chicago, '2026-03-08T06:00:00', '2026-03-08'],
        [chicago, '2026-03-09T04:59:59', '2026-03-08'],
        [chicago, '2026-03-09T05:00:00', '2026-03-09'],
        [chicago, '2026-11-01T04:59:59', '2026-10-31'],
        [chicago, '2026-11-02T05:59:59', '2026-11-01'],
        [santiago, '2026-09-06T03:59:59', '2026-09-05'],
        [santiago, '2026-09-06T04:00:00', '2026-09-06'],
        [santiago, '2026-04-05T02:59:59', '2026-04-04'],
        [santiago, '2026-04-05T03:00:00', '2026-04-04'],
        [santiago, '2026-04-05T04:00:00', '2026-04-05'],
      ] as const) {
        clock.toUtc(wall(before))
        expect([moment, dayText(clock.dayOf(wall(moment)))]).toEqual([moment, on])
      }
  })

  test('days outside of what was asked for are shown by the offset at the nearer end', () => {
    const summer = zoneClock('America/Chicago', dayNumber('2026-07-01'), dayNumber('2026-07-10'))
    expect(shown(summer.toUtc(wall('2026-01-01T00:00:00')))).toBe('2026-01-01T05:00:00')
    expect(shown(summer.toUtc(wall('2026-12-31T00:00:00')))).toBe('2026-12-31T05:00:00')
    // Three days beyond are still looked at.
    const spring = zoneClock('America/Chicago', dayNumber('2026-03-10'), dayNumber('2026-10-30'))
    expect(shown(spring.toUtc(wall('2026-03-07T12:00:00')))).toBe('2026-03-07T18:00:00')
    expect(shown(spring.toUtc(wall('2026-11-02T12:00:00')))).toBe('2026-11-02T18:00:00')
    // A fourth is not: whoever asks for it must have asked for a later last day.
    const short = zoneClock('America/Chicago', dayNumber('2026-03-10'), dayNumber('2026-10-29'))
    expect(shown(short.toUtc(wall('2026-11-02T12:00:00')))).toBe('2026-11-02T17:00:00')
  })

  test('a day that a zone skips at the date line begins where the next one does, and is left out from end to end', () => {
    // Samoa went from 29 December 2011, 24:00 (10:00 UTC on the 30th), to 31 December.
    const apia = zoneClock('Pacific/Apia', dayNumber('2011-12-20'), dayNumber('2012-01-10'))
    const skipped = ['2011-12-29T23:59:59', '2011-12-30T00:00:00', '2011-12-30T23:59:59', '2011-12-31T00:00:00']
    expect(skipped.map((text) => apia.isLeftOut(wall(text)))).toEqual([false, true, true, false])
    expect([day('2011-12-30'), day('2011-12-31')].map((on) => shown(apia.startOf(on)))).toEqual([
      ...['2011-12-30T10:00:00', '2011-12-30T10:00:00'],
    ])
    expect(dayText(apia.dayOf(wall('2011-12-30T09:59:59')))).toBe('2011-12-29')
    expect(dayText(apia.dayOf(wall('2011-12-30T10:00:00')))).toBe('2011-12-31')
  })

  test('what any zone’s clock shows at a moment is led back to that moment, or to the other one that shows it', () => {
    const zones = ['America/Chicago', 'America/Santiago', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'Africa/Casablanca']
    const clocks = zones.map((zone) => [zone, clockOf(zone)] as const)
    const minute = fc.integer({ min: wall('2026-01-01T00:00:00') / 60, max: wall('2026-12-31T00:00:00') / 60 })
    fc.assert(
      fc.property(fc.constantFrom(...clocks), minute, ([zone, clock], at) => {
        const local = localTime(new Date(at * 60_000).toISOString(), zone)
        const shows = (dayNumber(local.day) * 24 + local.hour) * 3600 + local.minute * 60
        expect([clock.toUtc(shows, 0), clock.toUtc(shows, 1)]).toContain(at * 60)
        expect(clock.toUtc(shows, 0) !== clock.toUtc(shows, 1)).toBe(clock.isTwice(shows))
        expect(clock.isLeftOut(shows)).toBe(false)
        expect(dayText(clock.dayOf(at * 60))).toBe(local.day)
      }),
    )
  })
})
