import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { zones } from '@/content/zones'
import { type ClimateYear, climateYear, DAYS_IN_MONTH, degreeDays } from '@/lib/core/climate'
import type { Climate } from '@/lib/core/household'
import { below } from '../support/oracle/normal'

const DESIGN = { heatingDesignF: 5, coolingDesignF: 90 }
const sum = (values: Iterable<number>) => [...values].reduce((a, b) => a + b, 0)

function annual(hdd65: number, cdd65: number): ClimateYear {
  return climateYear({ kind: 'annual', hdd65, cdd65, ...DESIGN }, tables.figures)
}

/** AHRI 210/240, heating bin fractions, bins centred 62, 57, 52 … °F, as read in public simulation sources [S?]. */
const AHRI = {
  I: [0.291, 0.239, 0.194, 0.129, 0.081, 0.041, 0.019, 0.005, 0.001],
  II: [0.215, 0.189, 0.163, 0.143, 0.112, 0.088, 0.056, 0.024, 0.008, 0.002],
  III: [0.153, 0.142, 0.138, 0.137, 0.135, 0.118, 0.092, 0.047, 0.021, 0.009, 0.005, 0.002, 0.001],
  IV: [0.132, 0.111, 0.103, 0.093, 0.1, 0.109, 0.126, 0.087, 0.055, 0.036, 0.026, 0.013, 0.006, 0.002, 0.001],
  V: [
    0.106, 0.092, 0.086, 0.076, 0.078, 0.087, 0.102, 0.094, 0.074, 0.055, 0.047, 0.038, 0.029, 0.018, 0.01, 0.005,
    0.002, 0.001,
  ],
}

/** How far the climate's distribution below 65 °F is from the bins: greatest difference, and mean depth over the table's. */
function againstBins(fractions: number[], year: ClimateYear) {
  const under = (edge: number) => sum(Array.from(year.meanF, (mean, i) => below((edge - mean) / (year.sigmaF[i] ?? 0))))
  const cold = under(65)
  let cumulative = 0
  const gaps = fractions.map((fraction, i) => {
    cumulative += fraction
    return Math.abs(cumulative - (1 - under(59.5 - 5 * i) / cold))
  })
  const depth = sum(fractions.map((fraction, i) => fraction * (3 + 5 * i)))
  return { gap: Math.max(...gaps), depth: sum(degreeDays(year, 'heating', 65)) / cold / depth }
}

describe('the annual climate against the heating bins of AHRI 210/240 [S?]; cdd65 our guess', () => {
  test.each([
    ['III', 3500, 1500],
    ['IV', 5625, 900],
    ['V', 8594, 450],
  ] as const)('region %s: distribution within 0.13, mean depth within 15 %%', (region, hdd65, cdd65) => {
    const { gap, depth } = againstBins(AHRI[region], annual(hdd65, cdd65))
    expect(gap).toBeLessThan(0.13)
    expect(Math.abs(depth - 1)).toBeLessThan(0.15)
  })

  // Heating load hours 750 and 1250 at 37 and 27 °F make 875 and 1979 °F·day; a day's swing is not in the model.
  test.each([
    ['I', 875, 2500],
    ['II', 1979, 2000],
  ] as const)('region %s does not agree so well: the model has no daily swing', (region, hdd65, cdd65) => {
    const { gap, depth } = againstBins(AHRI[region], annual(hdd65, cdd65))
    expect(gap > 0.13 || Math.abs(depth - 1) > 0.15).toBe(true)
    expect(gap).toBeLessThan(0.3)
  })

  test('each row of bins sums to 1', () => {
    for (const fractions of Object.values(AHRI)) expect(sum(fractions)).toBeCloseTo(1, 2)
  })
})

describe('the annual fit by month stays within 12 % of the published year, summed absolute error', () => {
  test.each([
    // City utility's table of NOAA normals 1981–2010 [G]; cdd65 from memory.
    ['Seattle-Tacoma', [711, 605, 574, 440, 285, 144, 49, 36, 132, 380, 586, 755], 173],
    // NOAA Climate Prediction Center, population-weighted, 1981–2010 [G].
    ['New England', [1260, 1053, 928, 572, 281, 57, 11, 24, 138, 465, 731, 1086], 423],
    ['Mid-Atlantic', [1162, 974, 840, 486, 220, 31, 6, 13, 94, 396, 666, 1010], 627],
  ])('%s', (_, published, cdd65) => {
    const total = sum(published)
    const daily = degreeDays(annual(total, cdd65), 'heating', 65)
    let first = 0
    const error = DAYS_IN_MONTH.map((days, m) => {
      const month = sum(daily.slice(first, first + days))
      first += days
      return Math.abs(month - (published[m] as number))
    })
    expect(sum(error) / total).toBeLessThan(0.12)
  })
})

describe('the fit gives back the degree-days it was given', () => {
  test.each([
    [6200, 850],
    [250, 4000],
    [0, 3000],
    [2900, 0],
    [3001, 3000],
    [14_000, 0],
  ])('annual %i / %i', (hdd65, cdd65) => {
    const year = annual(hdd65, cdd65)
    expect(sum(degreeDays(year, 'heating', 65))).toBeCloseTo(hdd65, 1)
    expect(sum(degreeDays(year, 'cooling', 65))).toBeCloseTo(cdd65, 1)
  })

  test('no cold climate is flat: above 3000 heating degree-days the swing is 9 °F at least', () => {
    const { meanF, sigmaF } = annual(3001, 0)
    expect(Math.max(...meanF) - Math.min(...meanF)).toBeCloseTo(18, 2)
    expect(sigmaF[0]).toBe(6)
    expect(annual(2900, 1500).sigmaF[0]).toBe(6)
    expect(annual(1000, 200).sigmaF[0]).toBeLessThanOrEqual(6)
    const flat = annual(400, 400)
    expect(Math.max(...flat.meanF) - Math.min(...flat.meanF)).toBe(0)
    expect(flat.sigmaF[0]).toBeLessThan(6)
  })

  test('monthly, where a month has both; one without either keeps a spread of 3 °F', () => {
    const hdd65 = [900, 800, 600, 300, 120, 20, 0, 5, 60, 250, 500, 800]
    const cdd65 = [0, 0, 0, 5, 60, 200, 320, 280, 120, 10, 0, 0]
    const climate: Climate = { kind: 'monthly', hdd65, cdd65, ...DESIGN }
    const year = climateYear(climate, tables.figures)
    const may = degreeDays(year, 'heating', 65).slice(120, 151)
    expect(sum(may)).toBeCloseTo(120, 3)
    expect(sum(degreeDays(year, 'cooling', 65).slice(120, 151))).toBeCloseTo(60, 3)
    expect(year.sigmaF[0]).toBe(3)
    expect(year.sigmaF[200]).toBe(3)
  })
})

/** Thresholds of ASHRAE 169, °F·day. */
function zoneBy(cdd50: number, hdd65: number): number {
  if (cdd50 > 10_800) return 0
  if (cdd50 > 9000) return 1
  if (cdd50 > 6300) return 2
  return [3600, 5400, 7200, 9000, 12_600].filter((threshold) => hdd65 > threshold).length + 3
}

test.each(zones)('the starting values of zone $zone lie in it, by the thresholds of ASHRAE 169 [S]', (row) => {
  const cdd50 = sum(degreeDays(annual(row.hdd65, row.cdd65), 'cooling', 50))
  expect(zoneBy(cdd50, row.hdd65)).toBe(row.zone)
})

describe('a climate of hardly any summer', () => {
  const coldest = (year: ClimateYear) => Math.max(...year.meanF) - Math.min(...year.meanF)
  test('is flat up to 3000 °F·day, with its spread lowered until it fits, and swings by 9 °F at least above them', () => {
    const [flat, swings] = [annual(3000, 0), annual(3001, 0)]
    expect(coldest(flat)).toBe(0)
    expect(sum(degreeDays(flat, 'heating', 65))).toBeCloseTo(3000, 1)
    // From the coldest day to the warmest, twice 9 °F; no day of 365 lies exactly opposite the coldest.
    expect(coldest(swings)).toBeCloseTo(18, 2)
  })
})
