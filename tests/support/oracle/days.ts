const numbers = new Map<string, number>()

/** Days since 1970-01-01. Kept, for speed only. */
export function number(day: string): number {
  const known = numbers.get(day)
  if (known !== undefined) return known
  const made = Date.parse(`${day}T00:00:00Z`) / 86_400_000
  numbers.set(day, made)
  return made
}

export function text(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10)
}

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

const places = new Map<number, { month: number; ordinal: number }>()

/** 0…11 and 1…365; 29 February is given 28 February's climate (model.md, section 0). Kept, for speed only. */
export function monthAndDay(day: number): { month: number; ordinal: number } {
  const known = places.get(day)
  if (known) return known
  const place = findPlace(day)
  places.set(day, place)
  return place
}

function findPlace(day: number): { month: number; ordinal: number } {
  const [, month = 1, date = 1] = text(day).split('-').map(Number)
  let ordinal = Math.min(date, LENGTHS[month - 1] as number)
  for (let m = 0; m < month - 1; m++) ordinal += LENGTHS[m] as number
  return { month: month - 1, ordinal }
}

export function monthLength(month: number): number {
  return LENGTHS[month] as number
}

/** The year that a day lies in. */
export function yearOf(day: number): number {
  return Number(text(day).slice(0, 4))
}

/** Calendar months later; the month's last day where it is shorter. */
export function monthsLater(day: number, months: number): number {
  const [year = 0, month = 1, date = 1] = text(day).split('-').map(Number)
  const first = Date.UTC(year, month - 1 + months, 1)
  const last = Date.UTC(year, month + months, 0)
  return Math.min(first / 86_400_000 + date - 1, last / 86_400_000)
}
