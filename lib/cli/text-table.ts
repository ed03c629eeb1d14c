const GAP = 2
const NARROW = 60

/** Characters as a terminal counts them: a letter with its accents is one. */
function width(text: string): number {
  return [...text.normalize('NFC')].length
}

function padded(text: string, to: number): string {
  return text + ' '.repeat(Math.max(0, to - width(text)))
}

/** Words on lines of at most `columns` characters; a longer word keeps a line of its own. */
export function lines(text: string, columns: number): string[] {
  const found: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line !== '' && width(line) + 1 + width(word) > columns) {
      found.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...found, line]
}

export function wrapped(text: string, columns: number): string {
  return lines(text, columns).join('\n')
}

/**
 * Text in columns under headings, at most `columns` characters wide. The last columns give way first, and wrap;
 * where even that leaves too little room, each row becomes a short list.
 */
export function table(headings: readonly string[], rows: readonly (readonly string[])[], columns: number): string {
  const widths = headings.map((heading, at) => Math.max(width(heading), ...rows.map((row) => width(row[at] ?? ''))))
  const fitted = narrowed(widths, columns - GAP * (headings.length - 1))
  if (columns < NARROW || !fitted) {
    return rows.map((row) => wrappedRow(headings, row, columns)).join('\n\n')
  }
  return [headings, fitted.map((size) => '-'.repeat(size)), ...rows].map((row) => line(row, fitted)).join('\n')
}

const LEAST_WIDTH = 12

/** Column widths that fit: the widest column gives way, character by character, as far as words stay readable. */
function narrowed(widths: readonly number[], room: number): number[] | undefined {
  const fitted = [...widths]
  let spare = fitted.reduce((sum, size) => sum + size, 0) - room
  while (spare > 0) {
    const widest = Math.max(...fitted)
    if (widest <= LEAST_WIDTH) return undefined
    const at = fitted.lastIndexOf(widest)
    fitted[at] = widest - 1
    spare--
  }
  return fitted
}

function line(row: readonly string[], widths: readonly number[]): string {
  const cells = widths.map((size, at) => lines(row[at] ?? '', size))
  const height = Math.max(...cells.map((cell) => cell.length))
  return Array.from({ length: height }, (_, at) =>
    cells
      .map((cell, column) => padded(cell[at] ?? '', (widths[column] ?? 0) + GAP))
      .join('')
      .trimEnd(),
  ).join('\n')
}

function wrappedRow(headings: readonly string[], row: readonly string[], columns: number): string {
  return headings
    .map((heading, at) => ({ heading, cell: row[at] ?? '' }))
    .filter(({ cell }) => cell !== '')
    .map(({ heading, cell }) => wrapped(`${heading}: ${cell}`, columns))
    .join('\n')
}
