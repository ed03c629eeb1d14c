import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { FILE_LIMIT_BYTES, parseHouseholdFile } from '@/lib/forms/household-file'
import { readJson } from '@/lib/forms/read-json'
import { cpuTime } from '../support/cpu-time'

vi.setConfig({ testTimeout: 60_000 })

function say(input: string | Uint8Array): string {
  const read = parseHouseholdFile(input, '2026-11-25')
  return read.ok ? 'read' : read.faults.map((fault) => `${fault.path}: ${fault.say}`).join('\n')
}

const EMPTY = '{"plenum":1,"households":[]}'

describe('text that is no JSON is refused with the place of the slip', () => {
  test.each([
    ['', 'line 1, column 1 should have a household file, which begins with {, but the file ends there'],
    [
      '{\n  "plenum": 1,\n}',
      'line 3, column 1 should have a key in quotation marks (no comma before }), but there is "}"',
    ],
    ['{"plenum": NaN}', 'line 1, column 12 should have a value, but there is "NaN"'],
    ['{"plenum": 01}', 'line 1, column 12 should have a value, but there is "01"'],
    ['{"plenum" 1}', 'line 1, column 11 should have a colon, but there is "1"'],
    ['[1 2]', 'line 1, column 4 should have a comma or the end, but there is "2"'],
    ['{"a": "x\n"}', 'line 1, column 7 should have a text that ends with a quotation mark on the same line'],
    ['{"a": "\\x"}', 'line 1, column 7'],
    [`${EMPTY} x`, 'should have nothing more, but there is "x"'],
    ['{"plenum": 1', 'the file ends there'],
  ])('%j', (text, expected) => {
    expect(say(text)).toContain(`: is not JSON: `)
    expect(say(text)).toContain(expected)
  })

  test('exactly the texts that JSON.parse reads are read', () => {
    const near = fc.tuple(fc.json(), fc.nat(), fc.string({ maxLength: 2 })).map(([text, at, put]) => {
      const place = at % (text.length + 1)
      return text.slice(0, place) + put + text.slice(place + 1)
    })
    fc.assert(
      fc.property(fc.oneof(fc.json({ maxDepth: 4 }), near, fc.string()), (text) => {
        const read = readJson(text)
        let value: unknown
        try {
          value = JSON.parse(text)
        } catch {
          expect(read.ok).toBe(false)
          return
        }
        if (read.ok) expect(read.value).toEqual(value)
        else expect(read.faults[0]?.say).toMatch(/stands twice|nested deeper/)
      }),
      { numRuns: 500 },
    )
  })
})

describe('what JSON.parse would pass over', () => {
  test('a key twice in one group is a fault with its path', () => {
    expect(
      say('{"plenum":1,"households":[{"id":"a","filters":[{"id":"b","id":"c"}],"filters":[]}]}').split('\n'),
    ).toEqual([
      'households[0].filters[0].id: stands twice in the same group; keep one of the two',
      'households[0].filters: stands twice in the same group; keep one of the two',
    ])
  })

  test('the same key in two groups is none', () => {
    expect(readJson('[{"a":{"a":1}},{"a":2}]')).toEqual({ ok: true, value: [{ a: { a: 1 } }, { a: 2 }] })
  })

  test('nesting without end is refused', () => {
    expect(say('['.repeat(1_000_000))).toMatch(/nested deeper/)
    expect(say(`${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`)).toMatch(/nested deeper/)
  })

  test('a __proto__ key is an unknown key like any other', () => {
    expect(say('{"plenum":1,"households":[],"__proto__":{"plenum":1}}')).toMatch(/^__proto__: is not a key/)
    expect(({} as { plenum?: number }).plenum).toBeUndefined()
  })
})

describe('files that are no such file', () => {
  test('over 9 MB is refused before it is read', () => {
    const start = cpuTime()
    expect(say(new Uint8Array(10_000_000))).toMatch(/^: is larger than 9 MB/)
    expect(cpuTime() - start).toBeLessThan(100)
    expect(say(`${EMPTY}${' '.repeat(FILE_LIMIT_BYTES - EMPTY.length)}`)).toBe('read')
  })

  test('UTF-16 is named, other encodings refused, a UTF-8 mark passed over', () => {
    expect(say(Buffer.from(`\uFEFF${EMPTY}`, 'utf16le'))).toMatch(/^: is written in UTF-16; save it again/)
    expect(say(Buffer.from(EMPTY.replace('1', '"é"'), 'latin1'))).toMatch(/^: is not written in UTF-8/)
    expect(say(Buffer.from(`\uFEFF${EMPTY}`))).toBe('read')
    expect(say(`\uFEFF${EMPTY}`)).toBe('read')
  })

  test('lists, plain values and other versions are said', () => {
    expect(say('[]')).toBe(': must be a group of keys in braces, but is a list')
    expect(say('null')).toBe(': must be a group of keys in braces, but is null')
    expect(say('{"plenum":2,"households":{}}').split('\n')).toEqual([
      'plenum: must be 1, the version of the household file that is read here, but is 2',
      'households: must be a list of households in square brackets, but is a group of keys',
    ])
  })
})
