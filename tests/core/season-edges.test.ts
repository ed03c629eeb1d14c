import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { type DayNumber, dayNumber, dayText } from '@/lib/core/day'
import { Profiles } from '@/lib/core/profile'
import type { SeasonKind } from '@/lib/core/season'
import { condensateLook, humidifierPad, outdoorUnitClear } from '@/lib/core/season-tasks'
import { type SystemDays, systemDays } from '@/lib/core/system-days'
import { yearlyService } from '@/lib/core/yearly-service'
import { bareHome, PUMP } from '../support/plan-of'

const YEARS = [2024, 2025, 2026, 2027, 2028, 2029]

/** A system that heats and cools ten hours a day, in seasons between these days of every year. */
function daysOf(seasons: Partial<Record<SeasonKind, [first: string, end: string]>>): SystemDays {
  const days = systemDays(bareHome(), PUMP, dayNumber('2026-01-01'), tables, new Profiles(tables.figures))
  const found: SystemDays['profile']['seasons'] = new Map()
  for (const year of YEARS) {
    for (const kind of ['heating', 'cooling'] as const) {
      const [first, end] = seasons[kind] ?? []
      const start = dayNumber(`${year}-${first ?? '01-01'}`)
      const over = dayNumber(
        `${end !== undefined && first !== undefined && end < first ? year + 1 : year}-${end ?? '01-01'}`,
      )
      found.set(kind === 'heating' ? year : -year, first === undefined ? null : { start, end: over })
    }
  }
  const tenADay = (day: DayNumber) => day * 10
  return { ...days, profile: { ...days.profile, seasons: found }, heatThrough: tenADay, coolThrough: tenADay }
}

function told(due: ReturnType<typeof condensateLook>) {
  return due && `${dayText(due.due)} ${due.basis}`
}

const SINCE = dayNumber('2026-01-01')

describe('the look at the condensate line', () => {
  // 500 hours are fifty days of ten.
  const look = (last: string, coolThrough = (day: DayNumber) => day * 10) => {
    const days = { ...daysOf({ cooling: ['05-01', '10-01'] }), coolThrough }
    return told(condensateLook({ days, subject: 'd', last: dayNumber(last), since: SINCE, on: SINCE }, tables))
  }

  test('is due on the day on which the 500th hour has run, counted from the season’s start or the last look', () => {
    expect(look('2026-03-01')).toBe('2026-06-20 runtime')
    expect(look('2026-05-01')).toBe('2026-06-20 runtime')
    expect(look('2026-05-11')).toBe('2026-06-30 runtime')
  })

  test('goes by the calendar where the 500th hour runs on the ninetieth day itself', () => {
    const allOn = (on: string) => (day: DayNumber) => (day < dayNumber(on) ? 0 : 500)
    expect(look('2026-05-11', allOn('2026-08-08'))).toBe('2026-08-08 runtime')
    expect(look('2026-05-11', allOn('2026-08-09'))).toBe('2026-08-09 calendar')
    expect(look('2026-05-11', () => 0)).toBe('2026-08-09 calendar')
  })
})

describe('the humidifier’s pad', () => {
  const pad = (last: string | null, { hardWater = true, end = '05-01' } = {}) => {
    const days = daysOf({ heating: ['10-01', end] })
    return told(
      humidifierPad(
        { days, subject: 'd', last: last === null ? null : dayNumber(last), since: SINCE, on: SINCE, hardWater },
        tables,
      ),
    )
  }

  test('changed up to 91 days before the season is this season’s', () => {
    expect(pad('2026-07-01')).toBe('2026-10-01 season')
    // 600 hours are sixty days of ten, counted in the season only.
    expect(pad('2026-07-02')).toBe('2026-11-30 runtime')
    expect(pad('2026-07-02', { hardWater: false })).toBe('2027-10-01 season')
    expect(pad('2026-10-11')).toBe('2026-12-10 runtime')
  })

  test('lasts into the next season where this one ends before its hours', () => {
    expect(pad('2026-10-11', { end: '12-11' })).toBe('2026-12-10 runtime')
    expect(pad('2026-10-11', { end: '12-10' })).toBe('2027-10-01 season')
  })
})

describe('a technician’s yearly service', () => {
  // Before a heating season from 1 October: from 75 to 14 days before it, 18 July to 17 September.
  const service = (heatThrough: (day: DayNumber) => number, heatLoad: number, last = '2026-11-01') => {
    const days = daysOf({ heating: ['10-01', '05-01'] })
    const profile = { ...days.profile, totals: { ...days.profile.totals, heatLoad } }
    const due = yearlyService(
      {
        ...{ task: 'heating-service', kind: 'heating', days: { ...days, profile, heatThrough } },
        ...{ last: dayNumber(last), since: SINCE, on: SINCE },
      },
      tables,
    )
    return `${told(due)}, by ${dayText(due.latest)}`
  }
  const tenADay = (day: DayNumber) => day * 10
  const allOn = (on: string) => (day: DayNumber) => (day < dayNumber(on) ? 0 : 1000)

  test('comes early once more than one and a half usual years have run since the last, not with the last hour of them', () => {
    // 600 hours are sixty days of ten: on 31 December they are just over, and on the day after there are more.
    expect(service(tenADay, 400)).toBe('2027-01-01 runtime, by 2027-01-31')
    expect(service(tenADay, 399)).toBe('2026-12-31 runtime, by 2027-01-30')
  })

  test('is told by its season where the hours are only full on the window’s last day or later', () => {
    expect(service(allOn('2027-09-16'), 400)).toBe('2027-09-16 runtime, by 2027-10-16')
    for (const on of ['2027-09-17', '2027-09-18', '2027-12-01'])
      expect(service(allOn(on), 400)).toBe('2027-09-17 season, by 2027-09-17')
  })

  test('of equipment that runs less than an hour in a usual year is never told by its hours', () => {
    expect(service(tenADay, 0.99)).toBe('2027-09-17 season, by 2027-09-17')
    // An hour and a half is over on the day after the last service.
    expect(service(tenADay, 1)).toBe('2026-11-02 runtime, by 2026-12-02')
  })
})

describe('what is around the outdoor unit', () => {
  const clear = (
    last: string | null,
    seasons: Parameters<typeof daysOf>[0],
    { since = '2026-01-01', kinds = ['heating', 'cooling'] as SeasonKind[] } = {},
  ) =>
    told(
      outdoorUnitClear(
        {
          ...{ days: daysOf(seasons), subject: 'main', kinds },
          ...{ last: last === null ? null : dayNumber(last), since: dayNumber(since), on: SINCE },
        },
        tables,
      ),
    )
  const apart = { heating: ['10-01', '04-01'], cooling: ['06-01', '09-01'] } satisfies Parameters<typeof daysOf>[0]

  test('cleared up to a week before its season is clear for a month', () => {
    expect(clear('2026-05-24', apart)).toBe('2026-06-01 season')
    expect(clear('2026-05-25', apart)).toBe('2026-06-24 calendar')
    expect(clear('2026-08-31', apart)).toBe('2026-10-01 season')
  })

  test('is first cleared in the season that comes first, whichever it is', () => {
    expect(clear(null, apart, { since: '2026-05-01' })).toBe('2026-06-01 never-recorded')
    expect(clear(null, apart, { since: '2026-09-10' })).toBe('2026-10-01 never-recorded')
    expect(clear(null, apart, { since: '2026-11-10' })).toBe('2026-11-10 never-recorded')
    expect(clear('2026-04-20', apart)).toBe('2026-06-01 season')
  })

  test('is told by the month that is over where another season begins on that very day', () => {
    const touching = { heating: ['10-01', '06-20'], cooling: ['06-01', '09-01'] } satisfies Parameters<typeof daysOf>[0]
    expect(clear('2026-05-02', touching)).toBe('2026-06-01 calendar')
    expect(clear('2026-05-02', touching, { kinds: ['cooling'] })).toBe('2026-06-01 season')
    expect(clear('2026-05-03', touching)).toBe('2026-06-01 season')
  })

  test('is nobody’s task without a season', () => expect(clear('2026-05-02', {})).toBeNull())
})
