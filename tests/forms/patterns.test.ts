import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { hostileTo, listPatterns } from '../support/patterns'

// An expression that begins anew at every sign takes 10,000 of them some 50 ms or more; one that is safe takes one.
const MOST_MS = 15

// Those that do, and what keeps a long text from them: the line that says so stands in the file.
const KEPT_SHORT: Record<string, string> = {
  'lib/access/public-url.ts \\/+$': 'process.env.PUBLIC_URL',
  'lib/core/unit-words.ts \\B(?=(\\d{3})+$)': 'toFixed(decimals)',
  'lib/forms/fields.ts \\B(?=(\\d{3})+$)': 'String(',
  'lib/forms/guide-brief-form.ts ^(-?\\d{1,3}(?:\\.\\d{1,2})?)\\s*°?\\s*(f|c)?$': 'plain.length > 40',
  'lib/forms/rounds-query.ts \\s+to\\s+': 'part.length > 60',
  'lib/forms/size-form.ts ^(.+?)\\s*[x×*]\\s*(.+?)\\s*[x×*]\\s*(.+)$': '.slice(0, 40)',
  'lib/forms/unit-row.ts \\s*[x×*]\\s*': 'cell.length > 2000',
  'app/parts/year-layout.ts \\d+\\.\\d+': 'round(Number(number))',
}

test('no expression of ours takes long over a long text, but those that are given none', () => {
  const patterns = [...listPatterns('lib'), ...listPatterns('app')]
  expect(patterns.length).toBeGreaterThan(300)
  const slow = patterns.flatMap((pattern) => {
    const text = hostileTo(pattern, MOST_MS)
    const key = `${pattern.place.replace(/:\d+$/, '')} ${pattern.source}`
    return text === null ? [] : [{ key, text }]
  })
  expect(slow.filter(({ key }) => !(key in KEPT_SHORT))).toEqual([])
})

test('what keeps long texts from the slow ones stands in their files', () => {
  for (const [key, line] of Object.entries(KEPT_SHORT))
    expect(readFileSync(key.split(' ')[0] ?? '', 'utf8'), key).toContain(line)
})

test('an expression that is slow is found to be', () => {
  for (const source of ['^(a+)+$', '\\s+$', '(\\d+)*x', '^(.*a){12}$', 'a.*b.*c'])
    expect([source, hostileTo({ place: '', source, flags: '' }, MOST_MS)]).toEqual([source, expect.any(String)])
})
