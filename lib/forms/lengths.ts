// Apart from quantities.ts, so that a phone that reads a size without the network needs no more than this.

export const MM_PER_IN = 25.4

/** Inches from a length in inches, centimetres or millimetres: an inch is 25.4 mm by definition. */
export function inchesFrom(length: number, unit: 'in' | 'cm' | 'mm'): number {
  return unit === 'in' ? length : unit === 'cm' ? (length * 10) / MM_PER_IN : length / MM_PER_IN
}

const FRACTIONS: Record<string, string> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/**
 * A number as people type it: `15½`, `15 1/2`, `15-1/2`, `15.5`, `15,5`, `3/4`, `1,200`. Nothing where it is none.
 * A comma before exactly three last digits parts thousands; any other comma is a decimal one.
 */
export function typedNumber(typed: string): number | undefined {
  const plain = typed
    .trim()
    .replace(/["”″]$/, '')
    .replace(/[¼½¾⅛⅜⅝⅞]/, (sign) => ` ${FRACTIONS[sign]}`)
    .replaceAll(/[\u2044\u2215]/g, '/')
    .replace(/^\u2212/, '-')
    .trim()
  const mixed = /^(?:(\d{1,6})(?:\s+|\s?-\s?))?(\d{1,3})\s?\/\s?(\d{1,3})$/.exec(plain)
  if (mixed) return Number(mixed[3]) === 0 ? undefined : Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3])
  const grouped = /^-?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/.test(plain)
    ? plain.replaceAll(',', '')
    : plain.replace(',', '.')
  return /^-?\d{1,12}(?:\.\d{1,12})?$/.test(grouped) ? Number(grouped) + 0 : undefined
}
