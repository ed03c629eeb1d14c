import { readFileSync } from 'node:fs'
import fc from 'fast-check'

// What nobody types by accident: keys of every object, formulas, numbers that are none, days that do not exist, marks
// that turn text around, halves of letters, and more of anything than fits.
const EVIL = [
  ...['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', '$ACTION_ID_x', '../../etc/passwd'],
  ...['=1+1', '+1', '-1', '@x', '\t=1', '\r\nBcc: x@y', '<script>alert(1)</script>', '"\'><img src=x onerror=1>'],
  ...[
    '',
    ' ',
    '\u0000',
    '\ufeff',
    '\u202eabc',
    '\ud800',
    '\udfff',
    '\u00a0',
    '٣',
    '１２',
    '½',
    '∞',
    'e\u0301'.repeat(50),
  ],
  ...[
    '0',
    '-0',
    '00',
    '1e999',
    '-1e999',
    '0x10',
    '1_000',
    '1,5',
    '1.5.2',
    '9007199254740993',
    '1e-400',
    '+5',
    '5.',
    '.5',
  ],
  ...['2026-02-30', '0000-00-00', '9999-12-31', '2026-11-25', '2024-02-29', '11/25/2026', '25.11.2026', '-2026-01-01'],
  ...[
    '16x25x1',
    '16 1/2 x 25 x 1',
    '1/0',
    '0/0',
    '5 ft 99 in',
    '999999999999999999999999',
    '%',
    '%00',
    '%E0%A4%A',
    '~',
    '.',
  ],
  ...['//evil.example', '/\\evil.example', 'javascript:alert(1)', 'America/Chicago', 'Etc/GMT+99', 'x'.repeat(5000)],
]

/** A text that may be anything. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...EVIL) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 60 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 40 }) },
  { weight: 1, arbitrary: fc.double().map(String) },
  { weight: 1, arbitrary: fc.integer({ min: -20, max: 3000 }).map(String) },
)

/** The words that a file of ours knows: names of fields, choices, headings. */
export function wordsIn(file: string): string[] {
  const text = readFileSync(file, 'utf8')
  const quoted = [...text.matchAll(/'([^'\n]{1,40})'/g)].map(([, word = '']) => word)
  const keys = [...text.matchAll(/\b([a-z][\w]{0,30})\??:/g)].map(([, word = '']) => word)
  const rows = [...text.matchAll(/`([a-zA-Z-]{1,20})\$\{/g)].flatMap(([, word = '']) =>
    [0, 1, 2].map((n) => `${word}${n}`),
  )
  return [...new Set([...quoted, ...keys, ...rows, 'household', 'text', 'file'])]
}

const orEvil = (words: string[]) =>
  fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...words) }, { weight: 2, arbitrary: anyText })

/** Fields by name, some of them named and filled as a parser knows them, some several times. */
export function anyFields(words: string[]): fc.Arbitrary<[string, string][]> {
  return fc.array(fc.tuple(fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...words) }, anyText), orEvil(words)), {
    maxLength: 14,
  })
}

/** A form with such fields, and now and then a file where a text is expected. */
export function anyForm(words: string[]): fc.Arbitrary<FormData> {
  return fc.tuple(anyFields(words), fc.integer({ min: 0, max: 9 })).map(([fields, file]) => {
    const form = new FormData()
    for (const [i, [name, value]] of fields.entries()) form.append(name, i === file ? new File([value], name) : value)
    return form
  })
}

/** What was typed, as the description keeps it. */
export function anyTyped(words: string[]): fc.Arbitrary<Record<string, string[]>> {
  return anyFields(words).map((fields) => {
    const typed: Record<string, string[]> = {}
    for (const [name, value] of fields)
      if (name !== '__proto__') typed[name] = [...(Object.hasOwn(typed, name) ? (typed[name] ?? []) : []), value]
    return typed
  })
}

/** The part of an address behind the question mark, as a page is given it. */
export function anySearch(words: string[]): fc.Arbitrary<Record<string, string | string[] | undefined>> {
  return anyFields(words).map((fields) =>
    Object.fromEntries(
      fields.map(([name, value], i) => [name, i % 5 === 4 ? [value, value] : i % 7 === 6 ? undefined : value]),
    ),
  )
}

/** A valid text with something taken out, put in, doubled or cut off; now and then as it was. */
export function mutated(valid: fc.Arbitrary<string>): fc.Arbitrary<string> {
  const edit = fc.tuple(fc.nat(), fc.nat({ max: 40 }), fc.constantFrom('cut', 'put', 'double', 'end', 'swap'), anyText)
  return fc.tuple(valid, fc.array(edit, { maxLength: 4 })).map(([text, edits]) => {
    let now = text
    for (const [where, length, what, other] of edits) {
      const at = where % (now.length + 1)
      const piece = now.slice(at, at + length)
      const put = { cut: '', put: other + piece, double: piece + piece, end: '', swap: [...piece].reverse().join('') }[
        what
      ]
      now = now.slice(0, at) + put + (what === 'end' ? '' : now.slice(at + length))
    }
    return now
  })
}

/** The same for bytes. */
export function mutatedBytes(valid: fc.Arbitrary<Uint8Array>): fc.Arbitrary<Uint8Array> {
  const edit = fc.tuple(fc.nat(), fc.nat({ max: 255 }))
  return fc.tuple(valid, fc.array(edit, { maxLength: 8 }), fc.nat({ max: 9 })).map(([bytes, edits, end]) => {
    const now = Uint8Array.from(bytes)
    for (const [where, byte] of edits) if (now.length > 0) now[where % now.length] = byte
    return end === 0 ? now.subarray(0, Math.floor(now.length / 2)) : now
  })
}
