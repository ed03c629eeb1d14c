import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addDays } from '@/lib/core/day'
import { degreeDays, parseWeatherFile } from '@/lib/forms/weather-file'

/** npm `vega-datasets` 3.2.1, daily weather from the US government's archive, °C (BSD-3) [D]. */
function published(location: string): string {
  const url = new URL('../data/weather.csv', import.meta.resolve('vega-datasets'))
  const rows = readFileSync(fileURLToPath(url), 'utf8')
    .split('\n')
    .map((row) => row.split(','))
    .filter(([place]) => place === location)
  return ['date,max,min', ...rows.map(([, on, , max, min]) => `${on},${max},${min}`)].join('\n')
}

describe('degree-days from daily weather', () => {
  // model.md, check data: HDD65/CDD65 by year, 2012 to 2015, unrounded.
  test.each([
    [
      'Seattle',
      [
        [4808.8, 164.2],
        [4449.8, 358.7],
        [3963.1, 346.9],
        [3871.4, 454.0],
      ],
    ],
    [
      'New York',
      [
        [4112.1, 1195.4],
        [4861.7, 1084.3],
        [5012.1, 1017.3],
        [4579.5, 1360.0],
      ],
    ],
  ] as const)('%s by year as published data give them', (location, expected) => {
    const read = parseWeatherFile(published(location), 'C')
    if (!read.ok) throw new Error(JSON.stringify(read.faults[0]))
    const byYear = ['2012', '2013', '2014', '2015'].map((year) => {
      const days = read.days.filter(({ on }) => on.startsWith(year)).map(degreeDays)
      return [days.reduce((sum, { hdd65 }) => sum + hdd65, 0), days.reduce((sum, { cdd65 }) => sum + cdd65, 0)]
    })
    expect(byYear.flat().map((value) => Math.round(value * 10) / 10)).toEqual(expected.flat())
    // Four years together: the mean year, with 29 February weighed as any day of its month.
    const mean = expected.reduce((sum, [hdd]) => sum + hdd / 4, 0)
    expect(Math.abs(read.climate.annual.hdd65 / mean - 1)).toBeLessThan(0.005)
    expect(read.climate.hdd65).toHaveLength(12)
    expect(read.climate.days).toBe(1461)
  })

  function even(days: number, row = '30,50'): string {
    return ['Date,Min,Max', ...Array.from({ length: days }, (_, at) => `${addDays('2025-01-01', at)},${row}`)].join(
      '\r\n',
    )
  }

  test('a year at 40 °F has 25 degree-days a day, in each month by its length', () => {
    const read = parseWeatherFile(even(365), 'F')
    if (!read.ok) throw new Error('refused')
    expect(read.climate.hdd65).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days) => days * 25))
    expect(read.climate.annual).toEqual({ hdd65: 9125, cdd65: 0 })
  })

  test('360 days of the year are enough, 359 are not, and a second year does not replace them', () => {
    expect(parseWeatherFile(even(360), 'F').ok).toBe(true)
    expect(parseWeatherFile(even(359), 'F')).toMatchObject({
      ok: false,
      faults: [{ path: '', say: 'covers 359 days of the year; a climate needs at least 360 of them' }],
    })
    const twoHalves = even(200).replaceAll('2025', '2024').split('\r\n').slice(1)
    expect(parseWeatherFile([even(200), ...twoHalves].join('\r\n'), 'F').ok).toBe(false)
  })

  test('every wrong row is named with its line, all at once', () => {
    const text =
      'date,min,max\n2025-02-29,1,2\n2025-01-01,5,1\n\n2025-01-02,cold,400\n2025-01-03,1,2\n2025-01-03,1,2\n2025-01-04,1'
    const read = parseWeatherFile(text, 'C')
    if (read.ok) throw new Error('read')
    expect(read.faults.map(({ path, say }) => `${path}: ${say}`)).toEqual([
      'line 2: date must be a day that exists, written like 2026-11-25, but is the text "2025-02-29"',
      'line 3: min is 5, higher than max, 1',
      'line 5: min must be a temperature in °C, but is the text "cold"',
      'line 5: max must be a temperature in °C, but is the text "400"',
      'line 7: 2025-01-03 is there twice; keep one of the two',
      'line 8: max must be a temperature in °C, but is the text ""',
    ])
  })

  test('headings that are missing or there twice are said', () => {
    expect(parseWeatherFile('day,min,max\n', 'F')).toMatchObject({
      faults: [{ say: expect.stringContaining('wrong: date') }],
    })
    expect(parseWeatherFile('date,min,min,max\n', 'F')).toMatchObject({
      faults: [{ say: expect.stringContaining('wrong: min') }],
    })
  })

  test('any text and any bytes are read or refused', () => {
    const survives = (input: string | Uint8Array) => {
      const read = parseWeatherFile(input, 'F')
      expect(read.ok || read.faults.length > 0).toBe(true)
    }
    fc.assert(fc.property(fc.string(), survives))
    fc.assert(fc.property(fc.string(), (rows) => survives(`date,min,max\n${rows}`)))
    fc.assert(fc.property(fc.uint8Array(), survives))
  }, 60_000)
})
