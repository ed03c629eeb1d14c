import { firstDay } from './cycle'
import { type DayNumber, dayText } from './day'
import { dateInWords } from './day-words'
import { type Due, periodWindow } from './due'
import type { Basis } from './plan-types'
import { type Season, type SeasonKind, seasonOf } from './season'
import type { SystemDays } from './system-days'
import type { Tables } from './tables'
import { yearOf } from './yearly-service'

/** When a task of a season is next due, and what set the day. */
interface Next {
  due: DayNumber
  basis: Basis
  say: string
}

interface Facts {
  days: SystemDays
  subject: string
  last: DayNumber | null
  since: DayNumber
}

/** A look at the condensate drain: after so many cooling hours or days, in the cooling season only; null without one. */
export function condensateLook({ days, subject, last, since }: Facts, tables: Tables): Due | null {
  const { figures } = tables
  const period = figures.condensateDays.value
  const next = nextInSeason(seasonsAfter(days, ['cooling'], last ?? since, tables), last, since, (season) => {
    const base = Math.max(last ?? season.start, season.start)
    const start = days.coolThrough(base)
    const hours = figures.condensateHours.value
    const worn = firstDay(base + 1, base + period - 1, (day) => days.coolThrough(day) - start >= hours)
    return worn === null
      ? {
          due: base + period,
          basis: 'calendar',
          say: `${period} days after the last look, or the start of the cooling season.`,
        }
      : {
          due: worn,
          basis: 'runtime',
          say: `By then the cooling has run ${hours} hours since the last look, or the start of its season.`,
        }
  })
  return next && seasonDue('condensate-look', subject, next, period, tables)
}

/** The humidifier's pad: once a heating season, and again after so many hours with hard water; null without a season. */
export function humidifierPad(
  { days, subject, last, since, hardWater }: Facts & { hardWater: boolean },
  tables: Tables,
): Due | null {
  const { figures } = tables
  const period = figures.padWindowDays.value
  const next = nextInSeason(seasonsAfter(days, ['heating'], last ?? since, tables), last, since, (season) => {
    if (last === null || last < periodWindow(season.start, period).earliest) return atStart(season, 'heating')
    if (!hardWater) return null
    const start = days.heatThrough(Math.max(last, season.start))
    const hours = figures.padHoursHardWater.value
    const due = firstDay(
      Math.max(last, season.start) + 1,
      season.end - 1,
      (day) => days.heatThrough(day) - start >= hours,
    )
    return due === null
      ? null
      : { due, basis: 'runtime', say: `With hard water a pad lasts about ${hours} heating hours.` }
  })
  return next && seasonDue('humidifier-pad', subject, next, period, tables)
}

/** Clearing around the outdoor unit: at the start of each season that uses it, and every 30 days in it; null without one. */
export function outdoorUnitClear(
  { days, subject, last, since, kinds }: Facts & { kinds: SeasonKind[] },
  tables: Tables,
): Due | null {
  const period = tables.figures.outdoorUnitDays.value
  const next = nextInSeason(seasonsAfter(days, kinds, last ?? since, tables), last, since, (season) => {
    if (last === null || last < periodWindow(season.start, period).earliest) return atStart(season, season.kind)
    return { due: last + period, basis: 'calendar', say: `Every ${period} days while it runs.` }
  })
  return next && seasonDue('outdoor-unit-clear', subject, next, period, tables)
}

function atStart(season: Season, kind: SeasonKind): Next {
  return {
    due: season.start,
    basis: 'season',
    say: `The ${kind} season is expected from ${dateInWords(dayText(season.start))}.`,
  }
}

type NamedSeason = Season & { kind: SeasonKind }

/** The seasons that end after a day, for the next years, in order. */
function seasonsAfter(days: SystemDays, kinds: SeasonKind[], from: DayNumber, { figures }: Tables): NamedSeason[] {
  const year = yearOf(from)
  const seasons: NamedSeason[] = []
  for (let y = year - 1; y <= year + 2; y++) {
    for (const kind of kinds) {
      const season = seasonOf(days.profile, kind, y, figures)
      if (season && season.end > from) seasons.push({ ...season, kind })
    }
  }
  return seasons
}

/** The earliest day that falls inside a season; a task never recorded is due on the `since` day, or at the next start. */
function nextInSeason(
  seasons: NamedSeason[],
  last: DayNumber | null,
  since: DayNumber,
  next: (season: NamedSeason) => Next | null,
): Next | null {
  let best: Next | null = null
  for (const season of seasons) {
    const found: Next | null =
      last === null
        ? { due: Math.max(since, season.start), basis: 'never-recorded', say: 'Nothing is recorded about it yet.' }
        : next(season)
    if (found && found.due < season.end && (!best || found.due < best.due)) best = found
  }
  return best
}

function seasonDue(task: Due['task'], subject: string, next: Next, periodDays: number, tables: Tables): Due {
  const { doer, mark, reason, source } = tables.tasks[task]
  return {
    task,
    subject,
    doer,
    ...periodWindow(next.due, periodDays),
    basis: next.basis,
    reasons: [
      { say: next.say, mark: 'P' },
      { say: reason, mark, ...(source && { source }) },
    ],
  }
}
