import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { plan } from '@/lib/core/plan'
import { planJson } from '@/lib/core/plan-json'
import type { Plan } from '@/lib/core/plan-types'
import { aHousehold } from '../support/a-household'

/** The same plan with a key at each level that the documents do not name. */
function withMore<T>(value: T): T {
  if (Array.isArray(value)) return value.map(withMore) as T
  if (value === null || typeof value !== 'object') return value
  return { ...Object.fromEntries(Object.entries(value).map(([key, one]) => [key, withMore(one)])), more: 1 } as T
}

test('keys that the documents do not name are not given, at any level; what is unknown is null', () => {
  const [hall] = aHousehold().filters
  const washed = { ...hall, id: 'head', place: 'ductless-head', medium: 'screen' } as typeof hall
  const home = aHousehold({ tenure: 'let', filters: [hall, washed].flatMap((one) => one ?? []) })
  const made: Plan = { ...plan([home], tables, '2026-11-25'), on: '2026-11-25' }
  const text = [...planJson(withMore(made))].join('')
  expect(text).toBe(`${JSON.stringify(made, null, 2)}\n`)
  expect(made.households[0]?.workings.map(({ theta }) => theta === null)).toEqual([false, true])
  for (const part of [made.rounds, made.supplies, made.households[0]?.warnings]) expect(part?.length).toBeGreaterThan(0)
})
