/** `rowsInWords([3, 4, 5, 9])` is `Rows 3–5 and 9`; no rows are no words. */
export function rowsInWords(lines: readonly number[]): string {
  const ranges: [number, number][] = []
  for (const line of lines) {
    const last = ranges.at(-1)
    if (last && line === last[1] + 1) last[1] = line
    else ranges.push([line, line])
  }
  const words = ranges.map(([from, to]) =>
    from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}–${to}`,
  )
  const last = words.pop()
  if (last === undefined) return ''
  return `${lines.length === 1 ? 'Row' : 'Rows'} ${words.length > 0 ? `${words.join(', ')} and ` : ''}${last}`
}
