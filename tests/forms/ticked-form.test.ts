import fc from 'fast-check'
import { expect, test } from 'vitest'
import { TASKS } from '@/lib/core/household'
import { parseTicked, recordOfTick, tickValue } from '@/lib/forms/ticked-form'

function form(did: string[], fields: Record<string, string> = { on: '2026-11-25', once: 'page-1-of-1' }): FormData {
  const sent = new FormData()
  for (const value of did) sent.append('did', value)
  for (const [name, value] of Object.entries(fields)) sent.set(name, value)
  return sent
}

const anyTick = fc.record({
  householdId: fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' }),
  task: fc.constantFrom(...TASKS),
  subject: fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' }),
})

test('what is ticked comes back as it was offered, once each', () => {
  fc.assert(
    fc.property(fc.array(anyTick, { minLength: 1 }), (ticks) => {
      const values = ticks.map(tickValue)
      const parsed = parseTicked(form([...values, ...values]))
      expect(parsed.ok && parsed.value.ticked.map(tickValue)).toEqual([...new Set(values)])
    }),
  )
})

test('whatever is sent, the answer is a value or faults', () => {
  fc.assert(
    fc.property(fc.array(fc.string()), fc.string(), fc.string(), (did, on, once) => {
      const parsed = parseTicked(form(did, { on, once }))
      if (!parsed.ok) expect(parsed.faults.length).toBeGreaterThan(0)
    }),
  )
})

test('nothing ticked and no day are both said at once', () => {
  const parsed = parseTicked(form([], { on: '31.11.2026', once: 'page-1-of-1' }))
  expect(parsed.ok ? [] : parsed.faults.map(({ path }) => path)).toEqual(['did', 'on'])
})

test('a yearly service that is ticked was a technician’s', () => {
  const tick = { householdId: 'h', subject: 'main' }
  expect(recordOfTick({ ...tick, task: 'boiler-service' }, '2026-11-25')).toMatchObject({ by: 'technician' })
  expect(recordOfTick({ ...tick, task: 'wash-filter' }, '2026-11-25')).toEqual({
    on: '2026-11-25',
    kind: 'filter-changed',
    filter: 'main',
  })
})
