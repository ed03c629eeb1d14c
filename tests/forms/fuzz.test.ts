import { readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { CutOff } from '@/lib/forms/multipart-file'
import { cpuTime } from '../support/cpu-time'
import { FUZZED } from '../support/fuzzed'
import { wordsIn } from '../support/garbage'

vi.setConfig({ testTimeout: 120_000 })

// Whatever a browser, a file, an address or a program may send, to every reader there is.

/** Made with settings: what they give is the reader. */
const CURRIED: Record<string, unknown[]> = { parseSignUp: [() => []], parseNewPassword: [() => null] }
const form = FUZZED.parseSignIn
const TABLE = { ...FUZZED, ...Object.fromEntries(Object.keys(CURRIED).map((name) => [name, form])) }

/** What takes values of ours and never what was sent, or is a part that readers are made of. */
const NO_READERS = new Set(
  `oneOf parseForm pathText faultsOf withoutFaults shown field number year day text id yesNo list keys choice thermsFrom
  fahrenheitFrom celsiusFrom typedQuantity typedPower typedTemperature typedPastDay inchesFrom btuPerFt3From degreeDays calendarOf
  roundsAddress walkAddress homesAddress suppliesAddress stockFields logQueryText tickValue recordOfTick
  writeHouseholdFile matchingFaults apiDocument billUnitInWords unitsFor billReadings csvOptions roleFaults stepInWords
  runOf isListOfDays assemble ventilatorScreens peopleTyped devicesTyped chosenSystem filterTyped
  systemTyped contactsTyped placeTyped tickable readWhen numbersOf stepBefore mayAddAnother moved equipmentOf
  equipmentWords systemName known freshId one placesFor keptAsShown encodeWalk withoutLast finderHref addressOf
  addressAfter addressBefore encodeWatch rememberOnPhone dayAt dayOfMinute phoneCookie`.split(/\s+/),
)
/** JSON may hold 1e999, which its schema refuses; a cell of an export that says nothing is NaN, as its comment says. */
const NO_NUMBER_YET = ['readJson', 'readRun', 'readRows']
const LONGEST_MS = 2000
// The same cases each time, so that a chance find turns no other change red: `FUZZ_SEED=…` tries others.
const SEED = Number(process.env.FUZZ_SEED ?? 10)

interface Reader {
  name: string
  file: string
  read: (...args: unknown[]) => unknown
}

const readers: Reader[] = []
let cases = 0

beforeAll(async () => {
  const guide = ['address', 'finder-address', 'finder-replay', 'watch-address', 'phone-memory']
  const files = [
    ...readdirSync('lib/forms', { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !file.startsWith('rules/'))
      .map((file) => join('lib/forms', file)),
    ...guide.map((name) => `lib/guide/${name}.ts`),
  ]
  for (const file of files) {
    const module = (await import(/* @vite-ignore */ resolve(file))) as Record<string, unknown>
    for (const [name, made] of Object.entries(module)) {
      if (typeof made !== 'function' || /^class\b/.test(String(made))) continue
      const settings = CURRIED[name]
      const read = (settings ? made(...settings) : made) as Reader['read']
      readers.push({ name, file, read })
    }
  }
})

test('every reader has its garbage, and what is no reader is said to be none', () => {
  const known = new Set([...Object.keys(TABLE), ...NO_READERS])
  expect(readers.filter(({ name }) => !known.has(name)).map(({ name, file }) => `${file}: ${name}`)).toEqual([])
  expect([...known].filter((name) => !readers.some((reader) => reader.name === name))).toEqual([])
})

describe('no reader throws, takes long, gives a number that is none, or speaks gibberish', () => {
  test.each(Object.entries(TABLE))('%s', async (name, fuzzed) => {
    const those = readers.filter((reader) => reader.name === name)
    expect(those.length).toBeGreaterThan(0)
    for (const { file, read } of those) {
      const property = fc.asyncProperty(fuzzed?.args(wordsIn(file)) ?? fc.constant<unknown[]>([]), async (args) => {
        cases++
        const repeats = isGibberish(args)
        const start = cpuTime()
        const got = await drained(read, args)
        expect(cpuTime() - start).toBeLessThan(LONGEST_MS)
        expect(faultsIn(got, { repeats, allows: NO_NUMBER_YET.includes(name) })).toEqual([])
        expect(({} as Record<string, unknown>).polluted).toBeUndefined()
      })
      await fc.assert(property, { numRuns: fuzzed?.runs ?? 0, endOnFailure: true, seed: SEED })
    }
  })
})

afterAll(() => {
  expect(cases).toBeGreaterThanOrEqual(20_000)
})

/** What a reader gives; a stream is read to its end, where being cut off is the one thing it may throw. */
async function drained(read: Reader['read'], args: unknown[]): Promise<unknown> {
  const got = await read(...args)
  if (typeof got !== 'object' || got === null || !(Symbol.asyncIterator in got)) return got
  try {
    const all: unknown[] = []
    for await (const piece of got as AsyncIterable<unknown>) all.push(piece)
    return all
  } catch (error) {
    if (error instanceof CutOff) return null
    throw error
  }
}

// What was sent may be repeated in a fault: only words of our own are judged.
const GIBBERISH =
  /NaN|\bundefined\b|\[object |Infinity|Invalid (input|option|string)|Too (small|big)|expected .* received/
function isGibberish(args: unknown[]): boolean {
  const sent = args.map((one) =>
    one instanceof FormData ? JSON.stringify([...one]) : typeof one === 'string' ? one : JSON.stringify(one),
  )
  return sent.some((one) => GIBBERISH.test(one ?? ''))
}

/** Everything that no reader may give, wherever it stands in what was given. */
function faultsIn(got: unknown, may: { repeats: boolean; allows: boolean }, path = '', depth = 0): string[] {
  if (typeof got === 'number') return Number.isFinite(got) || may.allows ? [] : [`${path} is ${got}`]
  if (typeof got !== 'object' || got === null || depth > 12 || got instanceof Uint8Array || got instanceof File)
    return []
  if (got instanceof Map) return faultsIn([...got], may, path, depth)
  const proto = Object.getPrototypeOf(got)
  // Made by `__proto__` in what was sent.
  const odd = proto === Object.prototype || proto?.constructor !== Object ? [] : [`${path} has another’s prototype`]
  return [
    ...odd,
    ...Object.entries(got).flatMap(([key, value]) => {
      const at = `${path}.${key}`
      if (key === 'say' && typeof value === 'string' && ('path' in got || (got as { ok?: unknown }).ok === false)) {
        const isOdd = !may.repeats && GIBBERISH.test(value)
        return value.trim().includes(' ') && !isOdd ? [] : [`${at} says “${value}”`]
      }
      if (key === 'faults' && Array.isArray(value))
        for (const fault of value)
          if (typeof fault === 'object' && (typeof fault.path !== 'string' || typeof fault.say !== 'string'))
            return [`${at} has a fault without a path or a sentence`]
      return faultsIn(value, may, at, depth + 1)
    }),
  ]
}
