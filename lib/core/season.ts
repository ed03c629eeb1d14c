import { cycleThrough, yearOf } from './cycle'
import { type DayNumber, dayNumber, dayText } from './day'
import { dateInWords } from './day-words'
import type { Profile } from './profile'
import type { Figures } from './tables'

/** A heating or cooling season: its first day, and the first day after it. */
export interface Season {
  start: DayNumber
  end: DayNumber
}

export type SeasonKind = 'heating' | 'cooling'

const OPENS: Record<SeasonKind, string> = { heating: '07-01', cooling: '02-01' }

/**
 * The season of a kind that starts within a year from 1 July (heating) or 1 February (cooling) of `year`, from
 * the unscaled model; null for a climate, or a system, without one.
 */
export function seasonOf(profile: Profile, kind: SeasonKind, year: number, figures: Figures): Season | null {
  const key = kind === 'heating' ? year : -year
  let season = profile.seasons.get(key)
  if (season === undefined) {
    season = findSeason(profile, kind, year, figures)
    profile.seasons.set(key, season)
  }
  return season
}

function findSeason(profile: Profile, kind: SeasonKind, year: number, figures: Figures): Season | null {
  const cycle = kind === 'heating' ? profile.loadCycles.heat : profile.loadCycles.cool
  const days = figures.seasonMeanDays.value
  const least = figures.seasonHours.value * days
  const isSeason = (day: DayNumber) => cycleThrough(cycle, day + days - 1) - cycleThrough(cycle, day - 1) >= least
  const opens = dayNumber(`${year}-${OPENS[kind]}`)
  const closes = dayNumber(`${year + 1}-${OPENS[kind]}`)
  let start = opens
  while (start < closes && !isSeason(start)) start++
  if (start === closes) return null
  let end = start + 1
  while (end < start + 365 && isSeason(end)) end++
  return { start, end }
}

/** The season that holds a day; null outside one. */
export function seasonOn(profile: Profile, kind: SeasonKind, day: DayNumber, figures: Figures): Season | null {
  const year = yearOf(day)
  for (const opened of [year, year - 1]) {
    const season = seasonOf(profile, kind, opened, figures)
    if (season && season.start <= day && day < season.end) return season
  }
  return null
}

/** `The heating season is expected from 29 September 2026`, and once it should have begun: `was expected from`. */
export function seasonExpected(kind: SeasonKind, start: DayNumber, on: DayNumber): string {
  return `The ${kind} season ${start < on ? 'was' : 'is'} expected from ${dateInWords(dayText(start))}`
}
