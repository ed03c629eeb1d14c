import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Household, LogRecord, System } from '@/lib/core/household'
import { evidenceAmong, pooledHomes, startsFrom, withStarts } from '@/lib/core/pooled-homes'
import { dustStart, poolOf } from '@/lib/core/pooling'
import { aHousehold } from '../support/a-household'

const ON = '2026-11-25'
const BARE = aHousehold({ records: [], readings: [], dustEvents: [] })
const MAIN = BARE.systems[0] as System

/** A home whose filter was fitted in June and looked at, or changed, in September. */
function seen(
  id: string,
  light: 'clear' | 'half' | 'dark',
  kind: 'filter-looked' | 'filter-changed' = 'filter-looked',
) {
  const records: LogRecord[] = [
    { on: '2026-06-01', kind: 'filter-changed', filter: 'hall' },
    { on: '2026-09-20', kind, filter: 'hall', light },
  ]
  return { ...BARE, id, records }
}

const UNSEEN = { ...BARE, id: 'unseen' }

function starts(homes: readonly Household[]) {
  return homes.map(({ systems }) => systems.map((system) => system.dustStart))
}

describe('what a system tells others', () => {
  const told = (home: Household, on = ON) => evidenceAmong(home, tables, on).map(({ evidence }) => evidence)

  test('is what was seen at its filters: much dust where it was dark, little where it was clear', () => {
    const [dark, half, clear] = (['dark', 'half', 'clear'] as const).map((light) => told(seen('a', light))[0]?.mean)
    expect(dark).toBeGreaterThan(half as number)
    expect(half).toBeGreaterThan(clear as number)
    expect(told(seen('a', 'dark', 'filter-changed'))).toEqual(told(seen('a', 'dark')))
    const [fitted, look] = seen('a', 'dark').records
    expect(told({ ...BARE, records: [{ ...fitted, light: 'half' } as LogRecord, look as LogRecord] })[0]).not.toBeNull()
  })

  test('is nothing before anything was seen, or where only other things were done', () => {
    expect(told(UNSEEN)).toEqual([null])
    expect(told({ ...seen('a', 'dark'), records: seen('a', 'dark').records.slice(0, 1) })).toEqual([null])
    const service: LogRecord = { on: '2026-09-20', kind: 'service-done', task: 'heating-service', subject: 'main' }
    expect(told({ ...UNSEEN, records: [service] })).toEqual([null])
    expect(told({ ...seen('a', 'dark'), records: [service, ...seen('a', 'dark').records] })).toEqual(
      told(seen('a', 'dark')),
    )
    expect(told(seen('a', 'dark'), '2026-09-19')).toEqual([null])
  })

  test('is of the system whose filter it was', () => {
    const attic = { ...MAIN, id: 'attic', name: 'Attic' }
    const home = { ...seen('a', 'dark'), systems: [attic, MAIN] }
    const [other, own] = evidenceAmong(home, tables, ON)
    expect([other, own?.system]).toEqual([{ system: 'attic', evidence: null }, 'main'])
    expect([own?.evidence]).toEqual(told(seen('a', 'dark')))
  })

  test('never comes from a start that others told it', () => {
    const home = withStarts(seen('a', 'dark'), new Map([['main', { median: 3, spread: 0.2, systems: 9 }]]))
    expect(told(home)).toEqual(told(seen('a', 'dark')))
  })
})

describe('homes of one owner', () => {
  const homes = [seen('a', 'dark'), UNSEEN, seen('b', 'half')]
  const evidence = homes.flatMap((home) => evidenceAmong(home, tables, ON).flatMap((one) => one.evidence ?? []))

  test('start each from all the others, never from themselves', () => {
    const [a, b] = evidence as [(typeof evidence)[0], (typeof evidence)[0]]
    const from = (...others: typeof evidence) => {
      const prior = poolOf(others, tables.figures).startFor(null)
      return [prior && dustStart(prior)]
    }
    const pooled = pooledHomes(homes, tables, ON)
    expect(starts(pooled)).toEqual([from(b), from(a, b), from(a)])
    expect(starts(pooled).map(([start]) => start?.systems)).toEqual([1, 2, 1])
    expect(pooled.map(({ systems: _systems, ...rest }) => rest)).toEqual(
      homes.map(({ systems: _own, ...rest }) => rest),
    )
  })

  test('have a day each, where they lie in different zones', () => {
    // On the day before the look nothing was seen in that home yet.
    const days = (home: Household) => (home.id === 'a' ? '2026-09-19' : ON)
    expect(starts(pooledHomes(homes, tables, days)).map(([start]) => start?.systems)).toEqual([1, 1, undefined])
  })

  test('start as any other where nobody else tells anything, whatever they started from before', () => {
    const before = { ...seen('a', 'dark'), systems: [{ ...MAIN, dustStart: { median: 2, spread: 0.4, systems: 3 } }] }
    const [alone] = pooledHomes([before], tables, ON)
    expect(alone).toStrictEqual(seen('a', 'dark'))
    expect(pooledHomes([UNSEEN, UNSEEN], tables, ON)).toStrictEqual([UNSEEN, UNSEEN])
    expect(startsFrom(poolOf([], tables.figures), [{ system: 'main', evidence: null }])).toEqual(new Map())
  })
})

test('a start is told to the system it is for, and the others have none', () => {
  const start = { median: 1.4, spread: 0.5, systems: 7 }
  const home = {
    ...BARE,
    systems: [
      { ...MAIN, dustStart: { ...start, systems: 1 } },
      { ...MAIN, id: 'attic' },
    ],
  }
  expect(withStarts(home, new Map([['attic', start]])).systems).toStrictEqual([
    MAIN,
    { ...MAIN, id: 'attic', dustStart: start },
  ])
  expect(home.systems[0]?.dustStart?.systems).toBe(1)
})
