import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { figures } from '@/content/figures'
import {
  BTU_PER_THERM,
  celsiusFrom,
  fahrenheitFrom,
  inchesFrom,
  thermsFrom,
  typedDay,
  typedNumber,
  typedPastDay,
  typedPower,
  typedQuantity,
  typedTemperature,
} from '@/lib/forms/quantities'

describe('bills become therms', () => {
  // US Energy Information Administration, heat contents as in model.md section 2 [G].
  test.each([
    [1000, 'ft3', 10.36],
    [100, 'ccf', 103.6],
    [100, 'oil-gallon', 137.381],
    [100, 'propane-gallon', 91.333],
    [100, 'kwh', 3.412],
    [100, 'therm', 100],
    // By definition: a gallon is 3.785411784 litres, a gigajoule 947,817 Btu (NIST SP 811, appendix B).
    [378.5411784, 'oil-litre', 137.381],
    [378.5411784, 'propane-litre', 91.333],
    [10, 'gj', 94.7817120313],
  ] as const)('%d %s are %d therms', (amount, unit, therms) => {
    expect(thermsFrom(amount, unit)).toBeCloseTo(therms, 9)
  })

  test('a therm is as many Btu where bills are read as in the model', () => {
    expect(BTU_PER_THERM).toBe(figures.btuPerTherm.value)
  })
})

describe('what a unit gives or takes', () => {
  const input = typedPower({ min: 10_000, max: 400_000, unit: 'Btu/h' }, { btuh: 1, decimals: 0 })
  const tons = typedPower({ min: 0.5, max: 10, unit: 'tons of cooling' }, { btuh: 12_000, decimals: 2 })

  test('is typed in its own unit or in kilowatts, of which one is 3,412.14 Btu/h', () => {
    expect(['80,000', '23 kW', ' 23kw ', '23,5 KW'].map((typed) => input.parse(typed))).toEqual([
      80_000, 78_479, 78_479, 80_185,
    ])
    // A ton of refrigeration is 12,000 Btu/h, 3.517 kW.
    expect(['3', '10.5 kW', '35 kW'].map((typed) => tons.parse(typed))).toEqual([3, 2.99, 9.95])
  })

  test.each([
    [input, '117 kW', null],
    [input, '118 kW', 'Write a number between 3 and 117 (kW), not 118.'],
    [input, '2.9 kW', 'Write a number between 3 and 117 (kW), not 2.9.'],
    [input, '23', 'Write a number between 10000 and 400000 (Btu/h), not 23.'],
    [input, 'kW', 'Write a number between 3 and 117 (kW).'],
    [tons, 'two kW', 'Write a number between 1.8 and 35 (kW); the text "two" is no number.'],
  ])('%#: beyond what is sold it is said in the unit that was typed', (schema, typed, say) => {
    const read = schema.safeParse(typed)
    expect(read.success ? null : read.error.issues.map(({ message }) => message)).toEqual(say && [say])
  })
})

describe('typed numbers', () => {
  test.each([
    ['15½', 15.5],
    ['15 1/2', 15.5],
    ['15-1/2', 15.5],
    ['15.5', 15.5],
    ['15,5', 15.5],
    ['3/4', 0.75],
    ['¾', 0.75],
    ['24 ⅝"', 24.625],
    [' 16 ', 16],
    ['1,200', 1200],
    ['80,000', 80_000],
    ['-10', -10],
    ['−10', -10],
    ['0,125', 0.125],
  ])('%s is %d', (typed, value) => expect(typedNumber(typed)).toBe(value))

  test.each(['', ' ', 'sixteen', '1/0', '15..5', '1e3', '0x10', 'Infinity', '15 1', '1,2,3'])('%j is none', (typed) =>
    expect(typedNumber(typed)).toBeUndefined(),
  )

  test('any text is a finite number or none', () => {
    fc.assert(
      fc.property(fc.string(), (typed) => {
        expect(Number.isFinite(typedNumber(typed) ?? 0)).toBe(true)
      }),
    )
  }, 60_000)

  test('say their limits', () => {
    const people = typedQuantity({ min: 0, max: 30, unit: 'people', whole: true })
    expect(people.parse('3')).toBe(3)
    const message = (typed: unknown) => people.safeParse(typed).error?.issues[0]?.message
    expect(message('31')).toBe('Write a whole number between 0 and 30 (people), not 31.')
    expect(message('2½')).toBe('Write a whole number between 0 and 30 (people), not 2.5.')
    expect(message('')).toBe('Write a whole number between 0 and 30 (people).')
    expect(message(undefined)).toBe('Write a whole number between 0 and 30 (people).')
    expect(message('many')).toBe('Write a whole number between 0 and 30 (people); the text "many" is no number.')
  })
})

describe('other units', () => {
  // Fixed points of the scales and the inch of 1959, by definition.
  test('temperatures and lengths', () => {
    expect([fahrenheitFrom(0), fahrenheitFrom(100), fahrenheitFrom(-40)]).toEqual([32, 212, -40])
    expect(celsiusFrom(212)).toBe(100)
    expect([inchesFrom(2.54, 'cm'), inchesFrom(25.4, 'mm'), inchesFrom(16, 'in')]).toEqual([1, 1, 16])
    expect(typedTemperature({ minF: 40, maxF: 90, unit: 'C' }).parse('21')).toBeCloseTo(69.8)
    expect(typedTemperature({ minF: 40, maxF: 90, unit: 'C' }).safeParse('70').error?.issues[0]?.message).toBe(
      'Write a number between 5 and 32 (°C), not 70.',
    )
  })
})

describe('dates of forms', () => {
  test.each([
    ['2026-11-25', '2026-11-25'],
    ['2026-1-5', '2026-01-05'],
    ['2026/01/05', '2026-01-05'],
  ])('%s is %s', (typed, day) => expect(typedDay.parse(typed)).toBe(day))

  test.each(['', '2026-02-29', '25/11/2026', '1/5/2026', 'today', '26-11-25'])('%j is none', (typed) =>
    expect(typedDay.safeParse(typed).error?.issues[0]?.message).toMatch(/^(Choose a day\.|Write a day that exists)/),
  )

  test('what was done is not in the future', () => {
    expect(typedPastDay('2026-11-25').parse('2026-11-25')).toBe('2026-11-25')
    expect(typedPastDay('2026-11-25').safeParse('2026-11-26').error?.issues).toHaveLength(1)
  })
})
