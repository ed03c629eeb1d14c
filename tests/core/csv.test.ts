import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { csvText, withoutApostrophe } from '@/lib/core/csv'

test('whatever is written is read back by an independent reader, but for the apostrophe before a formula', () => {
  const rows = fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: 3, maxLength: 3 }), {
    minLength: 1,
    maxLength: 9,
  })
  fc.assert(
    fc.property(rows, (table) => {
      const read = parse(csvText(table), { bom: true, record_delimiter: '\r\n', skip_empty_lines: false }) as string[][]
      expect(read).toEqual(table.map((row) => row.map((cell) => (/^\s*[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell))))
    }),
    { numRuns: 50 },
  )
}, 30_000)

test('a cell that was written reads as it was, with apostrophes of its own before it or a formula', () => {
  const cells = ['=1+1', "'=1+1", "''=1", "'tis", "'", '', 'plain', '  =cmd()', "' =1"]
  const [read = []] = parse(csvText([cells]), { bom: true, record_delimiter: '\r\n' }) as string[][]
  expect(read.map(withoutApostrophe)).toEqual(cells)
  // A sheet of another program: no apostrophe of ours, and nothing is taken away.
  expect(['=1+1', '-5', "'tis"].map(withoutApostrophe)).toEqual(['=1+1', '-5', "'tis"])
})

test('no cell begins like a formula, also behind blanks', () => {
  const csv = csvText([['=1+1', '+1', '-1', '@x', '\t=1', '  =cmd()', 'plain', '2026-11-25']])
  expect(csv).toBe(`\uFEFF'=1+1,'+1,'-1,'@x,'\t=1,'  =cmd(),plain,2026-11-25\r\n`)
})
