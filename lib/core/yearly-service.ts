import { firstDay, yearOf } from './cycle'
import { type DayNumber, dayNumber, dayText } from './day'
import { dateInWords } from './day-words'
import type { Due } from './due'
import type { Task } from './household'
import type { Reason } from './plan-types'
import type { Profile } from './profile'
import { type SeasonKind, seasonExpected, seasonOf, seasonOn } from './season'
import type { SystemDays } from './system-days'
import type { Figures, Tables } from './tables'

interface ServiceWindow {
  earliest: DayNumber
  /** Its last day is the due day. */
  end: DayNumber
  /** The first day of the season it comes before; null where there is none. */
  season: DayNumber | null
}

const WITHOUT_SEASON: Record<SeasonKind, { from: string; to: string }> = {
  heating: { from: '09-01', to: '10-31' },
  cooling: { from: '03-01', to: '04-30' },
}

/**
 * A technician's yearly service (model, section 6): in the window before the season that follows the last one, or
 * when the equipment has run half again as long as in a usual year.
 */
export function yearlyService(
  facts: {
    task: Task
    kind: SeasonKind
    days: SystemDays
    last: DayNumber | null
    since: DayNumber
    /** The day on which the reasons are read: what is past by then is told as past. */
    on: DayNumber
  },
  tables: Tables,
): Due {
  const { task, kind, days, last, since, on } = facts
  const { figures } = tables
  const about = (earliest: DayNumber, due: DayNumber, latest: DayNumber, basis: Due['basis'], reason: Reason): Due => ({
    task,
    subject: days.system.id,
    doer: tables.tasks[task].doer,
    earliest,
    due,
    latest,
    basis,
    reasons: [reason],
  })
  if (last === null && seasonOn(days.profile, kind, since, figures)) {
    return about(since, since, since + figures.lateServiceDays.value, 'never-recorded', {
      say: neverServiced(kind, since, on),
      mark: figures.lateServiceDays.mark,
    })
  }
  const window = nextWindow(
    days.profile,
    kind,
    last === null ? since : last + figures.serviceAtLeastAfterDays.value,
    figures,
  )
  const worn = last === null ? null : dayWorn(days, kind, last, window.end, figures)
  if (worn !== null) {
    return about(worn, worn, worn + figures.lateServiceDays.value, 'runtime', {
      say: `By then it ${worn <= on ? 'had' : 'will have'} run half again as many ${kind} hours since its last service as in a usual year.`,
      mark: figures.runtimeShareOfYear.mark,
    })
  }
  return about(window.earliest, window.end, window.end, 'season', windowReason(window, kind, on, figures))
}

function neverServiced(kind: SeasonKind, since: DayNumber, on: DayNumber): string {
  // Which season ran is known of the day of the description, and today may be in another.
  return since < on
    ? `No service is recorded, and on ${dateInWords(dayText(since))}, when this home was first described, the ${kind} season was running.`
    : `No service is recorded, and the ${kind} season is running.`
}

function windowReason(window: ServiceWindow, kind: SeasonKind, on: DayNumber, figures: Figures): Reason {
  if (window.season === null) {
    return {
      say: `This climate has no marked ${kind} season, so the service falls in its customary months.`,
      mark: 'P',
    }
  }
  const say = `${seasonExpected(kind, window.season, on)}; the service should ${window.end < on ? 'have been' : 'be'} done two weeks before it.`
  return { say, mark: figures.serviceClosesBeforeDays.mark }
}

function windowOf(profile: Profile, kind: SeasonKind, year: number, figures: Figures): ServiceWindow {
  const season = seasonOf(profile, kind, year, figures)
  if (!season) {
    const { from, to } = WITHOUT_SEASON[kind]
    return { earliest: dayNumber(`${year}-${from}`), end: dayNumber(`${year}-${to}`), season: null }
  }
  return {
    earliest: season.start - figures.serviceOpensBeforeDays.value,
    end: season.start - figures.serviceClosesBeforeDays.value,
    season: season.start,
  }
}

function nextWindow(profile: Profile, kind: SeasonKind, from: DayNumber, figures: Figures): ServiceWindow {
  for (let year = yearOf(from) - 1; ; year++) {
    const window = windowOf(profile, kind, year, figures)
    if (window.end >= from) return window
  }
}

/** The day before the window's end on which the hours since the last service pass their share of a usual year; null if none. */
function dayWorn(
  days: SystemDays,
  kind: SeasonKind,
  last: DayNumber,
  end: DayNumber,
  figures: Figures,
): DayNumber | null {
  const through = kind === 'heating' ? days.heatThrough : days.coolThrough
  const usual = days.profile.totals[kind === 'heating' ? 'heatLoad' : 'coolLoad']
  // Equipment that hardly runs is never worn by running.
  if (usual < figures.seasonHours.value) return null
  const start = through(last)
  const worn = usual * figures.runtimeShareOfYear.value
  return firstDay(last, end - 1, (day) => through(day) - start > worn)
}
