/**
 * Rows as a CSV file (RFC 4180, UTF-8 with its mark so that spreadsheets read it as such). A cell that a spreadsheet
 * would run as a formula gets an apostrophe before it.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`
}

// OWASP, "CSV Injection": = + - @, tab and return begin a formula; some programs trim blanks before they look. What
// begins with apostrophes before one gets one more, so that `withoutApostrophe` finds what was there.
const FORMULA = /^'*\s*[=+\-@\t\r]/

function cell(value: string): string {
  const plain = FORMULA.test(value) ? `'${value}` : value
  return /[",\r\n]|^\s|\s$/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain
}

/** The text of a cell that `csvText` wrote: without the apostrophe that keeps a formula from running. */
export function withoutApostrophe(cell: string): string {
  return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell
}
