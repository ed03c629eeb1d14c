import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addDays, dayNumber, dayText } from '@/lib/core/day'
import type { Reading } from '@/lib/core/household'
import {
  clashingReadings,
  coverOfReport,
  QUANTITIES,
  type Quantity,
  quantitiesOf,
  replaceReadings,
  type StandingReading,
  spanOf,
  withoutSpan,
} from '@/lib/core/reading-spans'

const OCTOBER: Reading = {
  ...{ system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat' },
  ...{ heatHours: 62, fanHours: 93 },
}

const span = fc
  .tuple(fc.integer({ min: 20_000, max: 20_400 }), fc.integer({ min: 0, max: 60 }))
  .map(([from, more]) => ({ from: dayText(from), to: addDays(dayText(from), more) }))
const hours = fc.integer({ min: 0, max: 100 })
const reading = fc
  .tuple(span, fc.constantFrom('thermostat' as const, 'hour-meter' as const, 'bill' as const), hours, fc.boolean())
  .map(
    ([days, source, count, both]): Reading =>
      source === 'bill'
        ? { system: 'main', ...days, source, therms: count, baseTherms: count / 4 }
        : { system: 'main', ...days, source, heatHours: count, ...(both && { coolHours: count }) },
  )

/** Readings as a home may hold them: nothing measured twice. */
const standing = fc
  .array(reading, { maxLength: 12 })
  .map((list) => list.filter((one, i) => clashingReadings([...list.slice(0, i), one]) === null))
  .filter((list) => clashingReadings(list) === null)
  .map((list): StandingReading[] => list.map((one, i) => ({ id: `r${i}`, reading: one })))

test('whatever is brought, afterwards no day is measured twice, or the contradiction is named', () => {
  fc.assert(
    fc.property(standing, fc.tuple(span, hours), (before, [days, count]) => {
      const fresh: Reading[] = [{ system: 'main', ...days, source: 'thermostat', heatHours: count, coolHours: 0 }]
      const { gone, rest, contradicting } = replaceReadings(before, fresh)
      const ids = new Set(gone.map(({ id }) => id))
      const kept = before.filter(({ id }) => !ids.has(id)).map((one) => one.reading)
      const clash = clashingReadings([...kept, ...rest, ...fresh])
      expect(clash === null).toBe(contradicting.length === 0)
      for (const one of contradicting) expect(one.standing.source).not.toBe('thermostat')
    }),
    { numRuns: 500 },
  )
})

test('what is left of a reading that is cut has its share of the days, and what was not measured anew stays whole', () => {
  expect(withoutSpan(OCTOBER, { from: '2026-10-11', to: '2026-10-20' }, ['heatHours'])).toEqual([
    { system: 'main', from: '2026-10-01', to: '2026-10-10', source: 'thermostat', heatHours: 20 },
    { system: 'main', from: '2026-10-21', to: '2026-10-31', source: 'thermostat', heatHours: 22 },
    { system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat', fanHours: 93 },
  ])
})

test('a cut loses no more than the days that are cut out', () => {
  fc.assert(
    fc.property(reading, span, (one, days) => {
      const rest = withoutSpan(one, days, QUANTITIES)
      const length = (part: { from: string; to: string }) => dayNumber(part.to) - dayNumber(part.from) + 1
      for (const quantity of quantitiesOf(one)) {
        if (one.source === 'bill') continue
        const whole = one[quantity] ?? 0
        const left = rest.reduce((sum, part) => sum + (part.source === 'bill' ? 0 : (part[quantity] ?? 0)), 0)
        const kept = rest.reduce((sum, part) => sum + length(part), 0) / length(one)
        expect(Math.abs(left - whole * kept)).toBeLessThan(0.02)
      }
    }),
  )
})

const OF_WINTER = { heatHours: 40 }
const METER = { system: 'main', source: 'hour-meter' as const }
const BILL: Reading = {
  ...{ system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'bill' },
  ...{ therms: 62, baseTherms: 15.5 },
}

test('a bill measures heating, any other reading what it has figures of', () => {
  expect(quantitiesOf(BILL)).toEqual(['heatHours'])
  expect(quantitiesOf(OCTOBER)).toEqual(['heatHours', 'fanHours'])
  expect(quantitiesOf({ ...METER, from: '2026-10-01', to: '2026-10-02', coolHours: 0 })).toEqual(['coolHours'])
})

test('readings reach from their first day to their last, in whatever order they come', () => {
  const days = [
    { from: '2026-10-05', to: '2026-10-30' },
    { from: '2026-10-01', to: '2026-10-04' },
    { from: '2026-10-03', to: '2026-10-20' },
  ]
  for (const list of [days, days.toReversed(), [days[2], days[0], days[1]] as typeof days])
    expect(spanOf(list)).toEqual({ from: '2026-10-01', to: '2026-10-30' })
  expect(() => spanOf([])).toThrow('no readings')
})

describe('what stands when others are brought', () => {
  const brought: Reading[] = [
    { system: 'main', from: '2026-10-11', to: '2026-10-12', source: 'thermostat', heatHours: 3, coolHours: 0 },
    { system: 'main', from: '2026-10-20', to: '2026-10-20', source: 'thermostat', heatHours: 1 },
  ]
  const happens = (reading: Reading, quantities: readonly Quantity[] = QUANTITIES) => {
    const { gone, rest, contradicting } = replaceReadings([{ id: 'a', reading }], brought, [
      { ...coverOfReport(brought), quantities },
    ])
    expect(gone.length + contradicting.length).toBeLessThanOrEqual(1)
    expect(rest.length > 0).toBe(gone.length > 0)
    for (const one of contradicting) expect([one.standing, brought.includes(one.fresh)]).toEqual([reading, true])
    return gone.length > 0 ? 'gone' : contradicting.length > 0 ? 'contradicts' : 'stays'
  }
  const from = (first: string, last: string, more: object = { heatHours: 9 }) =>
    ({ ...METER, source: 'thermostat', from: `2026-10-${first}`, to: `2026-10-${last}`, ...more }) as Reading

  test('gives way on the very first and last day of what is brought, and not on the day before or after', () => {
    expect([from('01', '11'), from('20', '29')].map((one) => happens(one))).toEqual(['gone', 'gone'])
    expect([from('01', '10'), from('21', '29')].map((one) => happens(one))).toEqual(['stays', 'stays'])
    // Between two that are brought nothing ran, as far as the same thermostat knows.
    expect(happens(from('14', '29'))).toBe('gone')
  })

  test('gives way in what may be measured anew, and stays where that is nothing of it', () => {
    expect(happens(OCTOBER, ['heatHours'])).toBe('gone')
    expect(happens(OCTOBER, ['fanHours'])).toBe('gone')
    expect(happens(OCTOBER, ['coolHours'])).toBe('stays')
    expect(happens({ ...OCTOBER, system: 'attic' })).toBe('stays')
  })

  test('contradicts from another source where it measures the same on a day of a reading brought', () => {
    const meter = (first: string, last: string, more: object = { heatHours: 9 }) =>
      ({ ...from(first, last), heatHours: undefined, source: 'hour-meter', ...more }) as Reading
    expect(happens(meter('01', '11'))).toBe('contradicts')
    expect(happens(meter('12', '19'))).toBe('contradicts')
    expect(happens(meter('13', '19'))).toBe('stays')
    expect(happens(meter('11', '11', { coolHours: 1 }))).toBe('contradicts')
    expect(happens(meter('20', '20', { coolHours: 1 }))).toBe('stays')
    expect(happens(meter('11', '20', { fanHours: 1 }))).toBe('stays')
    expect(happens(BILL)).toBe('contradicts')
    expect(happens({ ...BILL, system: 'attic' })).toBe('stays')
  })

  test('stays where nothing is brought', () => {
    const nothing = { gone: [], rest: [], contradicting: [] }
    expect(replaceReadings([{ id: 'a', reading: OCTOBER }], [])).toEqual(nothing)
  })
})

test('a bill that is cut keeps the share of its days of all its gas, down to a single day', () => {
  expect(withoutSpan(BILL, { from: '2026-10-02', to: '2026-10-21' }, ['heatHours'])).toEqual([
    { ...BILL, to: '2026-10-01', therms: 2, baseTherms: 0.5 },
    { ...BILL, from: '2026-10-22', therms: 20, baseTherms: 5 },
  ])
  expect(withoutSpan(BILL, { from: '2026-09-01', to: '2026-10-30' }, ['heatHours'])).toEqual([
    { ...BILL, from: '2026-10-31', therms: 2, baseTherms: 0.5 },
  ])
})

test('what was never measured is not made nothing by a cut', () => {
  const only = { ...METER, from: '2026-10-01', to: '2026-10-10', heatHours: 20 }
  expect(withoutSpan(only, { from: '2026-10-06', to: '2026-10-31' }, QUANTITIES)).toStrictEqual([
    { ...only, to: '2026-10-05', heatHours: 10 },
  ])
  expect(withoutSpan(only, { from: '2026-10-01', to: '2026-10-10' }, ['heatHours', 'fanHours'])).toEqual([])
})

describe('two readings clash', () => {
  const meter = (first: string, last: string, more: object = { heatHours: 9 }) =>
    ({ ...METER, from: `2026-10-${first}`, to: `2026-10-${last}`, ...more }) as Reading

  test('where one begins on the last day of another that measures the same, and not on the day after', () => {
    const [early, late] = [meter('01', '05'), meter('05', '09')]
    for (const list of [
      [early, late],
      [late, early],
    ])
      expect(clashingReadings(list)).toEqual([early, late])
    expect(clashingReadings([late, meter('01', '04')])).toBeNull()
    expect(clashingReadings([early, { ...late, system: 'attic' }])).toBeNull()
    expect(clashingReadings([early, meter('03', '04', { coolHours: 9 })])).toBeNull()
  })

  test('as the earliest two do, named in the order of their days, and as they came where they begin alike', () => {
    const list = [meter('20', '22'), meter('10', '12'), meter('01', '03'), meter('21', '23'), meter('12', '13')]
    expect(clashingReadings(list)).toEqual([list[1], list[4]])
    const [one, other] = [meter('01', '09'), meter('01', '02', { heatHours: 1, coolHours: 1 })]
    expect(clashingReadings([one, other])).toEqual([one, other])
    expect(clashingReadings([other, one])).toEqual([other, one])
  })
})

test('the same span of the same source again takes out all of it; another system is left alone', () => {
  const other = { id: 'b', reading: { ...OCTOBER, system: 'attic' } }
  const { gone, rest } = replaceReadings([{ id: 'a', reading: OCTOBER }, other], [OCTOBER])
  expect([gone.map(({ id }) => id), rest]).toEqual([['a'], []])
})

describe('rows that are typed cover their own days and figures only', () => {
  const month = (from: string, to: string, more: object): Reading =>
    ({ system: 'main', source: 'thermostat', from, to, ...more }) as Reading
  const november = month('2026-11-01', '2026-11-30', { heatHours: 90 })

  test('what was measured between two of them stays, and a report over the same days takes it out', () => {
    const typed = [month('2026-10-01', '2026-10-31', { heatHours: 50 }), month('2026-12-01', '2026-12-31', OF_WINTER)]
    const standing = [{ id: 'a', reading: november }]
    expect(replaceReadings(standing, typed)).toEqual({ gone: [], rest: [], contradicting: [] })
    expect(coverOfReport(typed)).toEqual({ from: '2026-10-01', to: '2026-12-31', quantities: QUANTITIES })
    expect(replaceReadings(standing, typed, [coverOfReport(typed)])).toMatchObject({ gone: standing, rest: [] })
  })

  test('a reading that two of them cut keeps the days of neither, and a figure that they have not', () => {
    const typed = [month('2026-11-01', '2026-11-10', OF_WINTER), month('2026-11-21', '2026-11-30', OF_WINTER)]
    const both = { ...november, fanHours: 120 }
    expect(replaceReadings([{ id: 'a', reading: both }], typed)).toEqual({
      gone: [{ id: 'a', reading: both }],
      rest: [
        month('2026-11-11', '2026-11-20', { heatHours: 30 }),
        month('2026-11-01', '2026-11-30', { fanHours: 120 }),
      ],
      contradicting: [],
    })
  })
})
