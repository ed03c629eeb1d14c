import { describe, expect, test } from 'vitest'
import { baseUseADay, isSummerLarger } from '@/lib/core/base-use'
import type { HeatSource, System } from '@/lib/core/household'
import type { Units } from '@/lib/core/unit-words'
import { billReadings, readBills, unitsFor } from '@/lib/forms/bill-form'
import { readHappened } from '@/lib/forms/happened-form'
import { readHours } from '@/lib/forms/hours-form'
import { readMeter } from '@/lib/forms/meter-form'
import { thermsFrom } from '@/lib/forms/quantities'

const ON = '2026-11-25'
function heated(source: HeatSource, inputBtuh?: number): System[] {
  return [{ id: 'main', name: 'Furnace', delivery: 'ducted', heat: { source, ...(inputBtuh && { inputBtuh }) } }]
}
const GAS = heated('gas-furnace', 80_000)
const typedOf = (fields: Record<string, string>) =>
  Object.fromEntries(Object.entries(fields).map(([name, text]) => [name, [text]]))

describe('an hour meter', () => {
  const stands = (rows: [string, string, string?][], more: Record<string, string> = {}) =>
    readMeter(
      typedOf({
        counter: 'heatHours',
        ...more,
        ...Object.fromEntries(
          rows.flatMap(([day, stand, next], i) => [
            [`day-${i}`, day],
            [`stand-${i}`, stand],
            [`new-${i}`, next ?? ''],
          ]),
        ),
      }),
      GAS,
      ON,
    )

  test('tells the hours between its stands, whatever order they were written in', () => {
    const read = stands([
      ['2026-03-01', '1230.5'],
      ['2026-01-01', '1000'],
      ['2026-02-01', '1130'],
    ])
    expect(read.ok && read.value).toEqual([
      { system: 'main', from: '2026-01-01', to: '2026-01-31', source: 'hour-meter', heatHours: 130 },
      { system: 'main', from: '2026-02-01', to: '2026-02-28', source: 'hour-meter', heatHours: 100.5 },
    ])
  })

  test('that was replaced begins anew, and one that passed its highest figure goes on', () => {
    const replaced = stands([
      ['2026-01-01', '9000'],
      ['2026-01-11', '9050', '3'],
      ['2026-01-21', '43'],
    ])
    expect(replaced.ok && replaced.value.map((one) => 'heatHours' in one && one.heatHours)).toEqual([50, 40])
    const over = stands(
      [
        ['2026-01-01', '99990'],
        ['2026-01-11', '30'],
      ],
      { most: '99999' },
    )
    expect(over.ok && over.value.map((one) => 'heatHours' in one && one.heatHours)).toEqual([40])
  })

  test('says all that is wrong at once: back in time, too many hours, two of one day, a day to come, no number', () => {
    const read = stands([
      ['2026-01-01', '100'],
      ['2026-01-05', '90'],
      ['2026-01-06', '200'],
      ['2026-01-06', '201'],
      ['2027-01-06', '300'],
      ['2026-01-08', 'x'],
    ])
    expect(read.ok).toBe(false)
    const faults = read.ok ? [] : read.faults
    expect(faults.map(({ path }) => path).sort()).toEqual(['day-3', 'day-4', 'stand-1', 'stand-2', 'stand-5'])
    expect(faults.find(({ path }) => path === 'stand-2')?.say).toContain('more than the 24')
    expect(stands([['2026-01-01', '100']]).ok).toBe(false)
  })
})

describe('hours that a thermostat shows', () => {
  const two = [...GAS, { id: 'attic', name: 'Attic', delivery: 'ducted' as const }]
  const shown = (rows: Record<string, string>[], systems: System[] = GAS, more: Record<string, string> = {}) =>
    readHours(
      typedOf({
        ...more,
        ...Object.fromEntries(
          rows.flatMap((row, i) => Object.entries(row).map(([field, text]) => [`${field}-${i}`, text])),
        ),
      }),
      systems,
      ON,
    )
  const september = { from: '2026-09-01', to: '2026-09-30' }

  test('are kept row by row with what it shows of them, nothing for what it does not show', () => {
    const read = shown([
      { ...september, coolHours: '41,5', heatHours: '0' },
      {},
      { from: '2026-10-01', to: '2026-10-31', heatHours: '62', fanHours: '80' },
    ])
    const of = { system: 'main', source: 'thermostat' }
    expect(read.ok && read.value).toEqual([
      { ...of, ...september, heatHours: 0, coolHours: 41.5 },
      { ...of, from: '2026-10-01', to: '2026-10-31', heatHours: 62, fanHours: 80 },
    ])
    const attic = shown([{ ...september, coolHours: '1' }], two, { system: 'attic' })
    expect(attic.ok && attic.value).toEqual([{ ...of, ...september, system: 'attic', coolHours: 1 }])
  })

  test('say all that is wrong at once: no figure, back in time, a day to come, more than the days have, days twice', () => {
    const read = shown(
      [
        september,
        { from: '2026-08-02', to: '2026-08-01', heatHours: '1' },
        { from: '2026-11-01', to: '2026-11-26', heatHours: '1' },
        { from: '2026-07-01', to: '2026-07-01', coolHours: '24.5' },
        { from: '2026-06-01', to: '2026-06-30', coolHours: 'much' },
        { from: '2026-05-01', to: '2026-05-31', coolHours: '9' },
        { from: '2026-05-31', to: '2026-06-01', coolHours: '9', fanHours: '9' },
        { heatHours: '9' },
      ],
      two,
    )
    const faults = read.ok ? [] : read.faults
    expect(faults.map(({ path }) => path).toSorted()).toEqual(
      'coolHours-3 coolHours-4 from-6 from-7 heatHours-0 system to-1 to-2 to-7'.split(' '),
    )
    const nothing = shown([])
    expect(nothing.ok || nothing.faults.map(({ path }) => path)).toEqual(['from-0'])
  })

  test('of heating and of cooling may share their days, for they are two figures', () => {
    const read = shown([
      { ...september, heatHours: '3' },
      { ...september, coolHours: '30' },
    ])
    expect(read.ok && read.value.length).toBe(2)
  })
})

describe('bills', () => {
  const bills = (
    rows: [string, string, string, string?][],
    more: Record<string, string> = {},
    { systems = GAS, units = 'us' }: { systems?: System[]; units?: Units } = {},
  ) =>
    readBills(
      typedOf({
        unit: 'therm',
        ...more,
        ...Object.fromEntries(
          rows.flatMap(([from, to, amount, base], i) => [
            [`from-${i}`, from],
            [`to-${i}`, to],
            [`amount-${i}`, amount],
            [`base-${i}`, base ?? ''],
          ]),
        ),
      }),
      { systems, units },
      ON,
    )

  test('in any unit come to therms, gas by volume with its own heat content', () => {
    // US Energy Information Administration, units and calculators: 1,036 Btu a cubic foot, 137,381 and 91,333 a gallon.
    expect(thermsFrom(100, 'ccf')).toBeCloseTo(103.6, 9)
    expect(thermsFrom(100, 'm3')).toBeCloseTo((100 * 35.3147 * 1036) / 100_000, 9)
    expect(thermsFrom(100, 'ccf', 1000)).toBeCloseTo(100, 9)
    expect(thermsFrom(100, 'oil-gallon', 500)).toBeCloseTo(137.381, 9)
    const read = bills([['2026-01-05', '2026-02-04', '100']], { unit: 'ccf', content: '1000' })
    expect(read.ok && billReadings(read.value, () => 10)).toEqual([
      { system: 'main', from: '2026-01-05', to: '2026-02-04', source: 'bill', therms: 100, baseTherms: 10 },
    ])
  })

  test('of a metric home name cubic metres and litres first, and take the heat of a cubic metre in MJ', () => {
    const first = (source: HeatSource) => {
      const may = unitsFor(source, 'metric')
      return 'units' in may ? may.units[0] : undefined
    }
    const sources = ['gas-furnace', 'oil-boiler', 'propane-furnace', 'wall-furnace'] as const
    expect(sources.map(first)).toEqual(['m3', 'oil-litre', 'propane-litre', 'm3'])
    const metric = (content: string) =>
      bills([['2026-01-05', '2026-02-04', '1000']], { unit: 'm3', content }, { units: 'metric' })
    const therms = (content: string) => {
      const read = metric(content)
      return read.ok ? billReadings(read.value, () => 0)[0] : undefined
    }
    // 38.6 GJ of 947,817 Btu; and the usual 1,036 Btu in each of 35,314.7 cubic feet.
    expect(therms('38.6')).toMatchObject({ therms: 365.857, baseTherms: 0 })
    expect(therms('')).toMatchObject({ therms: 365.86, baseTherms: 0 })
    const wrong = metric('1036')
    expect(wrong.ok ? '' : wrong.faults[0]?.say).toBe(
      'Write a number between 19 and 55 (MJ in a cubic metre), not 1036.',
    )
  })

  test('say all that is wrong at once', () => {
    const read = bills([
      ['2026-01-05', '2026-02-04', '-3'],
      ['2026-03-04', '2026-02-05', '50'],
      ['2026-04-01', '2026-04-30', '50', '60'],
      ['2026-05-01', '2026-05-31', '20'],
      ['2026-05-31', '2026-06-30', '20'],
    ])
    expect((read.ok ? [] : read.faults).map(({ path }) => path).sort()).toEqual([
      'amount-0',
      'base-2',
      'from-4',
      'to-1',
    ])
  })

  test('of a heat pump tell nothing, of resistance heat they do, of gas in gallons of oil they cannot be', () => {
    for (const source of ['heat-pump', 'dual-fuel'] as const) {
      const read = bills([['2026-01-05', '2026-02-04', '900']], { unit: 'kwh' }, { systems: heated(source, 40_000) })
      expect((read.ok ? [] : read.faults)[0]?.path).toBe('system')
    }
    const electric = bills(
      [['2026-01-05', '2026-02-04', '900']],
      { unit: 'kwh' },
      { systems: heated('electric-furnace', 51_180) },
    )
    expect(electric.ok && electric.value.coolingCounts).toBe(true)
    const oil = bills([['2026-01-05', '2026-02-04', '90']], { unit: 'oil-gallon' })
    expect((oil.ok ? [] : oil.faults)[0]?.say).toContain('therms, hundred cubic feet')
    const unrated = bills([['2026-01-05', '2026-02-04', '90']], {}, { systems: heated('gas-furnace') })
    expect((unrated.ok ? [] : unrated.faults)[0]?.say).toContain('input rating')
    expect(unitsFor('propane-boiler', 'us')).toEqual({ units: ['propane-gallon', 'propane-litre'] })
  })

  const bill = (from: string, to: string, amount: number, heat: number, cool = 0) => ({
    ...{ from, to, amount, modelHeatHours: heat, modelCoolHours: cool },
  })
  const JULY = bill('2026-07-01', '2026-07-31', 31, 0, 200)
  const MAY = bill('2026-05-01', '2026-05-31', 15.5, 5)
  const JANUARY = bill('2026-01-01', '2026-01-31', 155, 300)

  test('find what is not for heating as the middle of the days without heating; with cooling on the meter, not in July', () => {
    expect(baseUseADay([JULY, MAY, JANUARY], { coolingCounts: false })).toBeCloseTo(0.75, 9)
    expect(baseUseADay([JULY, MAY, JANUARY], { coolingCounts: true })).toBeCloseTo(0.5, 9)
    expect(baseUseADay([JANUARY], { coolingCounts: false })).toBeNull()
  })

  test('of which summer’s are larger than winter’s are no bills of this heating', () => {
    expect(isSummerLarger([JULY, JANUARY], { coolingCounts: false })).toBe(false)
    expect(isSummerLarger([{ ...JULY, amount: 200 }, JANUARY], { coolingCounts: false })).toBe(true)
    expect(isSummerLarger([{ ...JULY, amount: 200 }], { coolingCounts: false })).toBe(false)
  })
})

test('a heat wave needs its temperatures, smoke does not; all faults at once', () => {
  const smoke = readHappened(typedOf({ what: 'smoke', from: '2026-08-01', to: '2026-08-07' }), 'us')
  expect(smoke.ok && smoke.value).toEqual({
    list: 'dust',
    event: { kind: 'smoke', from: '2026-08-01', to: '2026-08-07' },
  })
  const hot = readHappened(
    typedOf({ what: 'hot', from: '2026-07-09', to: '2026-07-01', high: '20', low: 'x' }),
    'metric',
  )
  expect((hot.ok ? [] : hot.faults).map(({ path }) => path).sort()).toEqual(['low', 'to'])
  const metric = readHappened(
    typedOf({ what: 'hot', from: '2026-07-01', to: '2026-07-09', high: '38', low: '24' }),
    'metric',
  )
  expect(metric.ok && metric.value).toMatchObject({ spell: { highF: 100.4, lowF: 75.2 } })
})
