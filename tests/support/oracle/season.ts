import { number, yearOf } from './days'

export interface Season {
  start: number
  /** The first day outside it; null where a year brings none. */
  end: number | null
}

function mean14(hours: (day: number) => number, from: number): number {
  let sum = 0
  for (let d = from; d < from + 14; d++) sum += hours(d)
  return sum / 14
}

/** Model.md, section 6: the season that starts on or after 1 July (heating) or 1 February (cooling) of a year. */
export function seasonOf(kind: 'heat' | 'cool', hours: (day: number) => number, year: number): Season | null {
  const first = number(kind === 'heat' ? `${year}-07-01` : `${year}-02-01`)
  for (let start = first; start < first + 365; start++) {
    if (mean14(hours, start) < 1) continue
    for (let end = start + 1; end <= start + 365; end++) if (mean14(hours, end) < 1) return { start, end }
    return { start, end: null }
  }
  return null
}

/** The seasons of the years around a day, oldest first. */
export function seasonsAround(kind: 'heat' | 'cool', hours: (day: number) => number, day: number): Season[] {
  const years = Array.from({ length: 5 }, (_, i) => yearOf(day) - 2 + i)
  return years.flatMap((year) => seasonOf(kind, hours, year) ?? [])
}

/** Whether a day lies inside a season. */
export function isInside(season: Season, day: number): boolean {
  return season.start <= day && day < (season.end ?? season.start + 365)
}
