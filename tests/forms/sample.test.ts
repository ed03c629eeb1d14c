import { describe, expect, test } from 'vitest'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { addDays } from '@/lib/core/day'
import { parseHouseholdFile, writeHouseholdFile } from '@/lib/forms/household-file'

describe('the sample', () => {
  test('is a household file without fault on every day from 2026 to 2028', () => {
    for (let day = '2026-01-01'; day <= '2028-12-31'; day = addDays(day, 1)) {
      const { households } = sampleFile(day)
      expect(parseHouseholdFile(writeHouseholdFile(households), day), day).toEqual({ ok: true, households })
    }
  }, 60_000)

  test('shows an owner with a furnace, one with heat pumps and a renter', () => {
    const { households } = sampleFile(SAMPLE_DAY)
    expect(households.map(({ tenure }) => tenure)).toEqual(['own', 'own', 'rent'])
    expect(households.flatMap(({ systems }) => systems.map(({ heat }) => heat?.source))).toEqual([
      'gas-furnace',
      'heat-pump',
      'heat-pump',
      'electric-furnace',
    ])
    expect(new Set(households.flatMap(({ filters }) => filters.map(({ place }) => place)))).toContain('ductless-head')
    expect(households.every(({ since }) => since !== undefined)).toBe(true)
  })

  test('keeps the distance of every record to the day it is shown on', () => {
    const [before] = sampleFile(SAMPLE_DAY).households
    const [after] = sampleFile(addDays(SAMPLE_DAY, 100)).households
    expect(after?.records.map(({ on }) => on)).toEqual(before?.records.map(({ on }) => addDays(on, 100)))
  })
})
