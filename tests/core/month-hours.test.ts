import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber } from '@/lib/core/day'
import type { Reading, System } from '@/lib/core/household'
import { monthHours } from '@/lib/core/month-hours'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const [MAIN] = bareHome().systems as [System]

function daysOf(readings: Reading[]) {
  const home = bareHome({ climate: COLD, systems: [MAIN, { ...MAIN, id: 'attic', name: 'Attic' }], readings })
  return systemDays(home, MAIN, dayNumber(ON), tables, new Profiles(tables.figures))
}

/** The months of the main system of a home with two. */
function months(...readings: Reading[]) {
  return monthHours(daysOf(readings), readings, ON)
}

function read(from: string, to: string, hours: { heatHours?: number; coolHours?: number }, system = 'main'): Reading {
  return { system, from, to, source: 'thermostat', ...hours }
}

test('what was measured of another system is none of this one’s', () => {
  const heated = read('2025-01-01', '2026-10-31', { heatHours: 900, coolHours: 90 }, 'attic')
  expect(months(heated)).toEqual(months())
})

test('a year begins on the first of its twelfth month back, and two with the first that was measured before it', () => {
  const later = read('2026-10-01', '2026-10-31', { heatHours: 60 })
  const first = read('2025-12-01', '2025-12-31', { heatHours: 200 })
  expect(months(later, first).map(({ month }) => month)).toEqual([
    '2025-12-01',
    ...Array.from({ length: 11 }, (_, i) => `2026-${String(i + 1).padStart(2, '0')}-01`),
  ])
  const before = read('2025-11-30', '2025-11-30', { heatHours: 8 })
  expect([months(later, before).length, months(before, later).length]).toEqual([24, 24])
  expect(months(later, before)[0]?.month).toBe('2024-12-01')
})

test('cooling alone was measured of a month whose reading names no heating, and heating alone by a bill', () => {
  const cooled = months(read('2026-07-01', '2026-07-31', { coolHours: 95 })).find(({ month }) => month === '2026-07-01')
  expect([cooled?.heat.measuredDays, cooled?.cool.measuredDays]).toEqual([0, 31])
  // 50 therms above what does not heat, through 80,000 Btu/h, are 62.5 h.
  const bill = {
    system: 'main',
    from: '2026-02-01',
    to: '2026-02-28',
    source: 'bill',
    therms: 60,
    baseTherms: 10,
  } as const
  const billed = months(bill).find(({ month }) => month === '2026-02-01')
  expect([billed?.heat.measuredDays, billed?.cool.measuredDays]).toEqual([28, 0])
  expect(billed?.heat.measured).toBeCloseTo(62.5, 9)
  expect(billed?.heat.reckoned).toBe(0)
})

test('what was measured is compared with what the climate alone suggests for the same days', () => {
  const measured = months(read('2026-11-01', '2026-11-10', { heatHours: 90 })).at(-1)
  const { hoursOn } = daysOf([])
  let suggested = 0
  for (let day = 1; day <= 10; day++) suggested += hoursOn(dayNumber('2026-11-01') + day - 1).heat
  expect(suggested).toBeGreaterThan(10)
  expect(measured?.heat.modelledOnMeasured).toBeCloseTo(suggested, 9)
  expect(measured?.cool.modelledOnMeasured).toBe(0)
})
