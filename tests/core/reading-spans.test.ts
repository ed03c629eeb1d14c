import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays, dayNumber, dayText } from '@/lib/core/day'
import type { Reading } from '@/lib/core/household'
import {
  clashingReadings,
  QUANTITIES,
  quantitiesOf,
  replaceReadings,
  type StandingReading,
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
      const { gone, rest, contradicting } = replaceReadings(before, fresh, QUANTITIES)
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

test('the same span of the same source again takes out all of it; another system is left alone', () => {
  const other = { id: 'b', reading: { ...OCTOBER, system: 'attic' } }
  const { gone, rest } = replaceReadings([{ id: 'a', reading: OCTOBER }, other], [OCTOBER], QUANTITIES)
  expect([gone.map(({ id }) => id), rest]).toEqual([['a'], []])
})
