import { describe, expect, test } from 'vitest'
import { dayNumber, dayText } from '@/lib/core/day'
import type { Climate, Device, Household, LogRecord, Task } from '@/lib/core/household'
import { hoursOf } from '../support/oracle/hours'
import { seasonOf } from '../support/oracle/season'
import { bareHome, COLD, itemOf, POLAR, PUMP, TROPICAL } from '../support/plan-of'

const DRAIN: Device = { id: 'd', kind: 'condensate-drain' }
/** A summer of fewer than 500 cooling hours. */
const MILD: Climate = { ...COLD, cdd65: 500, coolingDesignF: 84 }
const HUMIDIFIER: Device = { id: 'd', kind: 'humidifier' }

/** The season's first day and the day after its last, by the oracle. */
function seasonDays(climate: Climate, kind: 'heat' | 'cool', year: number, home = bareHome({ climate })) {
  const hours = hoursOf(home, home.systems[0] as Household['systems'][number], 0)
  const found = seasonOf(kind, kind === 'heat' ? hours.unscaledHeat : hours.unscaledCool, year)
  return { start: found?.start ?? Number.NaN, end: found?.end ?? Number.NaN, hours }
}

function done(task: Task, on: number, subject = 'd'): LogRecord {
  return { on: dayText(on), kind: 'service-done', task, subject }
}

describe('the condensate line', () => {
  test('is looked at 90 days after the last look in a mild summer, and only in the season', () => {
    const [{ start, end }, next] = [seasonDays(MILD, 'cool', 2026), seasonDays(MILD, 'cool', 2027)]
    const lookedOn = (last: number) => {
      const records = [done('condensate-look', last)]
      return itemOf(bareHome({ climate: MILD, devices: [DRAIN], records }), 'condensate-look')
    }
    expect(end - start).toBeGreaterThan(95)
    expect(lookedOn(start - 30)).toMatchObject({ due: dayText(start + 90), basis: 'calendar' })
    expect(lookedOn(start + 3)).toMatchObject({ due: dayText(start + 93), latest: dayText(start + 102) })
    // Too late in this season for another look, so 90 days into the next.
    expect(lookedOn(end - 90)?.due).toBe(dayText(next.start + 90))
    expect(lookedOn(end - 91)?.due).toBe(dayText(end - 1))
  })

  test('is looked at after 500 cooling hours where those come first', () => {
    const last = dayNumber('2026-06-01')
    const home = bareHome({ climate: TROPICAL, devices: [DRAIN], records: [done('condensate-look', last)] })
    const { hours } = seasonDays(TROPICAL, 'cool', 2026)
    let [day, ran] = [last, 0]
    while (ran < 500) {
      day++
      ran += hours.unscaledCool(day)
    }
    expect(itemOf(home, 'condensate-look')).toMatchObject({
      due: dayText(day),
      earliest: dayText(day - 22),
      latest: dayText(day + 9),
      basis: 'runtime',
    })
  })

  test('never recorded is due on the day it was first described, inside the season only', () => {
    const { start } = seasonDays(COLD, 'cool', 2027)
    expect(itemOf(bareHome({ climate: COLD, since: '2026-11-01', devices: [DRAIN] }), 'condensate-look')).toMatchObject(
      {
        due: dayText(start),
        basis: 'never-recorded',
      },
    )
    const inside = bareHome({ climate: COLD, devices: [DRAIN], since: '2026-07-10' })
    expect(itemOf(inside, 'condensate-look')).toMatchObject({ due: '2026-07-10', basis: 'never-recorded' })
  })

  test('is nobody’s task where nothing is cooled', () => {
    expect(itemOf(bareHome({ climate: POLAR, devices: [DRAIN] }), 'condensate-look')).toBeUndefined()
  })
})

describe('the humidifier’s pad', () => {
  const home = (hardWater: boolean, last: number) =>
    bareHome({ climate: COLD, hardWater, devices: [HUMIDIFIER], records: [done('humidifier-pad', last)] })

  test('is changed at the start of the heating season', () => {
    const { start } = seasonDays(COLD, 'heat', 2026)
    const at = { due: dayText(start), earliest: dayText(start - 91), latest: dayText(start + 36), basis: 'season' }
    expect(itemOf(home(false, dayNumber('2026-01-10')), 'humidifier-pad')).toMatchObject(at)
  })

  test('and again after 600 heating hours with hard water, not with soft', () => {
    const { start, hours } = seasonDays(COLD, 'heat', 2026)
    let [day, ran] = [start, 0]
    while (ran < 600) {
      day++
      ran += hours.unscaledHeat(day)
    }
    expect(itemOf(home(true, start), 'humidifier-pad')).toMatchObject({ due: dayText(day), basis: 'runtime' })
    const next = seasonDays(COLD, 'heat', 2027)
    expect(itemOf(home(false, start), 'humidifier-pad')).toMatchObject({ due: dayText(next.start), basis: 'season' })
  })
})

describe('the outdoor unit', () => {
  const clear = (change: Partial<Household>) => itemOf(bareHome({ climate: COLD, ...change }), 'outdoor-unit-clear')

  test('is cleared at the start of its season and every 30 days in it', () => {
    const { start, end } = seasonDays(COLD, 'cool', 2026)
    const lookedOn = (last: number) => clear({ records: [done('outdoor-unit-clear', last, 'main')] })
    expect(lookedOn(start - 60)).toMatchObject({ due: dayText(start), basis: 'season' })
    expect(lookedOn(start + 2)).toMatchObject({
      due: dayText(start + 32),
      earliest: dayText(start + 25),
      latest: dayText(start + 35),
      basis: 'calendar',
    })
    const next = seasonDays(COLD, 'cool', 2027)
    expect(lookedOn(end - 30)?.due).toBe(dayText(next.start))
    expect(lookedOn(end - 31)?.due).toBe(dayText(end - 1))
  })

  test('of a heat pump works in both seasons', () => {
    const home = bareHome({ climate: COLD, systems: [PUMP] })
    const { start } = seasonDays(COLD, 'heat', 2026, home)
    const records = [done('outdoor-unit-clear', start + 40, 'main')]
    expect(clear({ systems: [PUMP], records })).toMatchObject({ due: dayText(start + 70), basis: 'calendar' })
  })
})
