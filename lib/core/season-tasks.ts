import { firstDay, yearOf } from './cycle'
import type { DayNumber } from './day'
import { type Due, periodWindow, taskReason } from './due'
import type { Basis, Reason } from './plan-types'
import { type Season, type SeasonKind, seasonExpected, seasonOf } from './season'
import type { SystemDays } from './system-days'
import type { Tables } from './tables'

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
  /** The day on which the reasons are read: what is past by then is told as past. */
  on: DayNumber
}

/** A look at the condensate drain: after so many cooling hours or days, in the cooling season only; null without one. */
export function condensateLook(facts: Facts, tables: Tables): Due | null {
  const { days, subject, on } = facts
  const { figures } = tables
  const period = figures.condensateDays.value
  const next = nextInSeason(facts, ['cooling'], tables, (season, last) => {
    const base = Math.max(last, season.start)
    const start = days.coolThrough(base)
    const hours = figures.condensateHours.value
    const worn = firstDay(base, base + period - 1, (day) => days.coolThrough(day) - start >= hours)
    return worn === null
      ? {
          due: base + period,
          basis: 'calendar',
          say: `${period} days after the last look, or the start of the cooling season.`,
        }
      : {
          due: worn,
          basis: 'runtime',
          say: `By then the cooling ${worn <= on ? 'had' : 'will have'} run ${hours} hours since the last look, or the start of its season.`,
        }
  })
  return next && seasonDue('condensate-look', subject, next, period, tables)
}

/** The humidifier's pad: once a heating season, and again after so many hours with hard water; null without a season. */
export function humidifierPad(facts: Facts & { hardWater: boolean }, tables: Tables): Due | null {
  const { days, subject, on, hardWater } = facts
  const { figures } = tables
  const period = figures.padWindowDays.value
  const next = nextInSeason(facts, ['heating'], tables, (season, last) => {
    if (last < periodWindow(season.start, period).earliest) return atStart(season, on)
    if (!hardWater) return null
    const base = Math.max(last, season.start)
    const start = days.heatThrough(base)
    const hours = figures.padHoursHardWater.value
    const due = firstDay(base, season.end - 1, (day) => days.heatThrough(day) - start >= hours)
    return due === null
      ? null
      : { due, basis: 'runtime', say: `With hard water a pad lasts about ${hours} heating hours.` }
  })
  return next && seasonDue('humidifier-pad', subject, next, period, tables)
}

/** Clearing around the outdoor unit: at the start of each season that uses it, and every 30 days in it; null without one. */
export function outdoorUnitClear(facts: Facts & { kinds: SeasonKind[] }, tables: Tables): Due | null {
  const { subject, on, kinds } = facts
  const period = tables.figures.outdoorUnitDays.value
  const next = nextInSeason(facts, kinds, tables, (season, last) => {
    if (last < periodWindow(season.start, period).earliest) return atStart(season, on)
    return { due: last + period, basis: 'calendar', say: `Every ${period} days while it runs.` }
  })
  return next && seasonDue('outdoor-unit-clear', subject, next, period, tables)
}

function atStart({ kind, start }: NamedSeason, on: DayNumber): Next {
  return { due: start, basis: 'season', say: `${seasonExpected(kind, start, on)}.` }
}

type NamedSeason = Season & { kind: SeasonKind }

// A task waits at most for the season after next.
const YEARS_AHEAD = 2

/**
 * The earliest day that falls inside a season of these kinds, from the one that runs or comes next, reckoned from the
 * last time; a task never recorded is due on the `since` day, or at the next start.
 */
function nextInSeason(
  { days, last, since }: Facts,
  kinds: SeasonKind[],
  { figures }: Tables,
  next: (season: NamedSeason, last: DayNumber) => Next | null,
): Next | null {
  const from = last ?? since
  const year = yearOf(from)
  let best: Next | null = null
  for (let y = year - 1; y <= year + YEARS_AHEAD; y++) {
    for (const kind of kinds) {
      const season = seasonOf(days.profile, kind, y, figures)
      if (!season || season.end <= from || (best && season.start > best.due)) continue
      const found: Next | null =
        last === null
          ? { due: Math.max(since, season.start), basis: 'never-recorded', say: 'Nothing is recorded about it yet.' }
          : next({ ...season, kind }, last)
      if (found && found.due < season.end && (!best || found.due < best.due)) best = found
    }
  }
  return best
}

function seasonDue(task: Due['task'], subject: string, next: Next, periodDays: number, tables: Tables): Due {
  const row = tables.tasks[task]
  const { earliest, due, latest } = periodWindow(next.due, periodDays)
  const reasons: Reason[] = [{ say: next.say, mark: 'P' }, taskReason(row)]
  return { task, subject, doer: row.doer, earliest, due, latest, basis: next.basis, reasons }
}
