/** The names of a check's lines, as its content begins them, and as a person reads them. */
export const CHECK_LINES: Record<string, string> = {
  'Only if': 'Only if',
  Do: 'Do this',
  Time: 'How long',
  'Stop if': 'Stop if',
  'If not': 'If it does not work',
}
