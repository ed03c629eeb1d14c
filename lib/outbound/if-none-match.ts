/** Whether who asks has what a tag names. RFC 9110, 13.1.2: a list of tags or `*`, compared weakly. */
export function hasAlready({ headers }: Request, tag: string): boolean {
  const asked = headers.get('if-none-match')
  if (asked === null) return false
  return asked.trim() === '*' || asked.split(',').some((one) => one.trim().replace(/^W\//, '') === tag)
}
