/**
 * Rows as a CSV file (RFC 4180, UTF-8 with its mark so that spreadsheets read it as such). A cell that a spreadsheet
 * would run as a formula gets an apostrophe before it.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`
}

function cell(value: string): string {
  // OWASP, "CSV Injection": = + - @, tab and return begin a formula; some programs trim blanks before they look.
  const plain = /^\s*[=+\-@\t\r]/.test(value) ? `'${value}` : value
  return /[",\r\n]|^\s|\s$/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain
}
