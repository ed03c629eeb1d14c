import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { parseHouseholdFile, writeHouseholdFile } from '@/lib/forms/household-file'
import { householdFile, ON } from '../support/arbitrary-file'
import { larkspur, type Part } from '../support/larkspur'

// Generating texts takes longer than reading them, on a busy machine much longer.
vi.setConfig({ testTimeout: 60_000 })

describe('a household file', () => {
  test('that is read and written again is the same, for every valid household', () => {
    fc.assert(
      fc.property(householdFile(), (households) => {
        const written = writeHouseholdFile(households)
        expect(parseHouseholdFile(written, ON)).toEqual({ ok: true, households })
        expect(writeHouseholdFile(JSON.parse(JSON.stringify(households)))).toBe(written)
      }),
      { numRuns: 200 },
    )
  })

  test('is written in the order of the documented example, without empty lists', () => {
    const text = JSON.stringify(larkspur(), null, 2)
    const read = parseHouseholdFile(text, ON)
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    expect(writeHouseholdFile(read.households)).toBe(`${text}\n`)
    const bare = read.households.map((household) => ({ ...household, dustEvents: [], readings: [] }))
    expect(writeHouseholdFile(bare)).not.toMatch(/dustEvents|readings/)
  })

  test('needs nothing that the documents call optional', () => {
    const file = larkspur()
    const household: Part = file.households[0] ?? {}
    const optional = 'building since elevationFt emergencyNumber petFactor dustEvents filters devices records readings'
    for (const key of optional.split(' ')) delete household[key]
    const system: Part = file.households[0]?.systems[0] ?? {}
    for (const key of ['heat', 'cool', 'fan', 'thermostat', 'airflowCfm']) delete system[key]
    expect(parseHouseholdFile(JSON.stringify(file), ON).ok).toBe(true)
  })

  test('may hold no household', () => {
    expect(parseHouseholdFile('{"plenum":1,"households":[]}', ON)).toEqual({ ok: true, households: [] })
  })
})

describe('whatever is put in', () => {
  const survives = (input: string | Uint8Array) => {
    const read = parseHouseholdFile(input, ON)
    if (!read.ok) {
      expect(read.faults.length).toBeGreaterThan(0)
      for (const { path, say } of read.faults) expect(`${path}${say}`).not.toMatch(/\p{Cc}/u)
    }
  }

  test('any JSON value is read or refused', () => {
    fc.assert(fc.property(fc.jsonValue(), (value) => survives(JSON.stringify(value))))
    fc.assert(fc.property(fc.jsonValue(), (value) => survives(JSON.stringify({ plenum: 1, households: [value] }))))
  })

  test('any text and any bytes are read or refused', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), survives))
    fc.assert(fc.property(fc.uint8Array(), survives))
  })

  test('a valid file with one value replaced is read, or the fault is at that place, above or below it', () => {
    const places = placesOf(larkspur())
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.jsonValue(), (place, value) => {
        const file = larkspur()
        put(file, place, value)
        const read = parseHouseholdFile(JSON.stringify(file), ON)
        if (read.ok) return
        for (const { path } of read.faults) expect(existsOrParentDoes(file, path), path).toBe(true)
      }),
      { numRuns: 500 },
    )
  })

  test('a valid file with one key taken away is read, or at least one fault says so', () => {
    for (const place of placesOf(larkspur())) {
      const file = larkspur()
      put(file, place, undefined)
      const read = parseHouseholdFile(JSON.stringify(file), ON)
      if (!read.ok) expect(read.faults.every(({ path }) => existsOrParentDoes(file, path))).toBe(true)
    }
  })
})

type Place = (string | number)[]

function placesOf(value: unknown, at: Place = []): Place[] {
  if (typeof value !== 'object' || value === null) return [at]
  const inside = Object.entries(value).flatMap(([key, part]) =>
    placesOf(part, [...at, Array.isArray(value) ? Number(key) : key]),
  )
  return at.length === 0 ? inside : [at, ...inside]
}

function put(root: unknown, place: Place, value: unknown): void {
  let holder = root as Record<string | number, unknown>
  for (const step of place.slice(0, -1)) holder = holder[step] as typeof holder
  holder[place.at(-1) ?? ''] = value
}

function existsOrParentDoes(root: unknown, path: string): boolean {
  const steps = [...path.matchAll(/\[(\d+)\]|\["((?:[^"\\]|\\.)*)"\]|([^.[\]]+)/g)].map(
    (found) => found[1] ?? found[2] ?? found[3],
  )
  let holder: unknown = root
  for (const step of steps.slice(0, -1)) holder = (holder as Record<string, unknown>)?.[step ?? '']
  return typeof holder === 'object' && holder !== null
}
