import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dustConcentration, dustFactors } from '@/lib/core/dust'

const PLAIN = { people: 2, pets: 0, smoking: false, carpet: false }

describe('the factors of a home’s dust', () => {
  test('people and pets are always told, smoking and carpet only where there are any', () => {
    expect(dustFactors(PLAIN, tables)).toEqual([
      { name: 'people', say: '2 people', factor: 1, mark: 'C' },
      { name: 'pets', say: '0 pets', factor: 1, mark: 'P' },
    ])
    expect(dustFactors({ people: 1, pets: 1, smoking: true, carpet: true }, tables)).toEqual([
      { name: 'people', say: '1 person', factor: expect.closeTo(0.85, 12), mark: 'C' },
      { name: 'pets', say: '1 pet', factor: 1.25, mark: 'P' },
      { name: 'smoking', say: 'smoking indoors', factor: 1.3, mark: 'P' },
      { name: 'carpet', say: 'mostly carpet', factor: 1.15, mark: 'C' },
    ])
  })

  test.each([
    [1, 1.25],
    [2, 1.5],
    [3, 1.75],
    [4, 2],
    [9, 2],
  ])('%i pets: %f', (pets, factor) => {
    expect(dustConcentration({ ...PLAIN, pets }, tables)).toBeCloseTo(55 * factor, 9)
  })

  test('a person’s own factor for pets replaces the table’s', () => {
    expect(dustConcentration({ ...PLAIN, pets: 3, petFactor: 1.1 }, tables)).toBeCloseTo(55 * 1.1, 9)
  })

  test('multiply the dust of the reference home', () => {
    const home = { people: 4, pets: 2, smoking: true, carpet: true }
    expect(dustConcentration(home, tables)).toBeCloseTo(55 * 1.3 * 1.5 * 1.3 * 1.15, 9)
  })

  test('without a table of pets nothing is reckoned', () => {
    expect(() => dustConcentration(PLAIN, { ...tables, pets: [] })).toThrow('the table of pets is empty')
  })
})
