/**
 * A value as both kinds of database keep it: in a text, U+0000 (which PostgreSQL refuses) and halves of characters are
 * U+FFFD, the mark of a character that could not be read.
 */
export function storable<T>(value: T): T {
  if (typeof value !== 'string') return value
  const whole = /[\ud800-\udfff]/.test(value) ? Buffer.from(value, 'utf8').toString('utf8') : value
  return (whole.includes('\0') ? whole.replaceAll('\0', '\ufffd') : whole) as T
}
