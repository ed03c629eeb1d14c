import { addDays, type Day, daysBetween } from '@/lib/core/day'
import { dayParts, shortDate } from '@/lib/core/day-words'
import type { SystemYear } from '@/lib/core/plan-types'
import { taskInWords } from '@/lib/core/words'

export const YEAR_DAYS = 365
const WEEK = 7

/** What the strip shows, in days from its first: the same for both drawings. */
export interface YearMarks {
  /** Mean hours a day, week by week, at the middle of each week; the first and last reach the edges. */
  weeks: { at: number; heat: number; cool: number }[]
  heatTop: number
  coolTop: number
  months: { at: number; name: string; year: number | null }[]
  lanes: Lane[]
  bars: { from: number; to: number; due: number; name: string; dates: string }[]
  today: number | null
}

export interface Lane {
  /** A, B, … where there are several, else empty. */
  letter: string
  name: string
  events: { at: number; kind: 'changed' | 'looked' | 'forecast'; date: string; deed: string }[]
  /** From the last change to today, with the share of the filter that is full. */
  load: { from: number; to: number; share: number } | null
}

/** `names` gives a subject's words, `loaded` the share of a filter that is full today (null: not known). */
export interface YearFacts {
  year: SystemYear
  on: Day
  names: (subject: string) => string
  loaded: (filter: string) => number | null
}

/** Reads a year into marks; events outside its 365 days are left out, windows are cut to it. */
export function yearMarks({ year, on, names, loaded }: YearFacts): YearMarks {
  const at = (day: Day) => daysBetween(year.from, day)
  const weeks = weeklyMeans(year)
  const several = year.filters.length > 1
  const today = at(on)
  const isInside = (day: number) => day >= 0 && day < YEAR_DAYS
  return {
    weeks,
    heatTop: Math.max(...weeks.map(({ heat }) => heat)),
    coolTop: Math.max(...weeks.map(({ cool }) => cool)),
    months: monthStarts(year.from),
    lanes: year.filters.map(({ filter, events }, index) => {
      const inside = events.filter(({ on: day }) => isInside(at(day))).sort((a, b) => at(a.on) - at(b.on))
      const change = inside.filter(({ kind, on: day }) => kind === 'changed' && at(day) <= today).at(-1)
      const share = loaded(filter)
      return {
        letter: several ? String.fromCharCode(65 + (index % 26)) : '',
        name: names(filter),
        events: inside.map(({ on: day, kind, task }) => ({
          at: at(day),
          kind,
          date: shortDate(day),
          deed: deed(kind, task === 'wash-filter'),
        })),
        load:
          change && share !== null && isInside(today) && at(change.on) < today
            ? { from: at(change.on), to: today, share: Math.max(0, Math.min(1, share)) }
            : null,
      }
    }),
    bars: year.windows
      .filter(({ earliest, latest }) => at(latest) >= 0 && at(earliest) < YEAR_DAYS)
      .map(({ task, earliest, due, latest }) => ({
        from: Math.max(0, at(earliest)),
        to: Math.min(YEAR_DAYS, at(latest) + 1),
        due: Math.max(0, Math.min(YEAR_DAYS - 1, at(due))),
        name: taskInWords(task),
        dates: earliest === latest ? shortDate(due) : `${shortDate(earliest)} – ${shortDate(latest)}`,
      }))
      .sort((a, b) => a.from - b.from || a.to - b.to),
    today: isInside(today) ? today : null,
  }
}

function deed(kind: 'changed' | 'looked' | 'forecast', washed: boolean): string {
  if (kind === 'looked') return 'looked'
  if (kind === 'changed') return washed ? 'washed' : 'changed'
  return washed ? 'wash' : 'change'
}

function weeklyMeans({ heatHours, coolHours }: SystemYear): YearMarks['weeks'] {
  const weeks: YearMarks['weeks'] = []
  for (let start = 0; start < YEAR_DAYS; start += WEEK) {
    const end = Math.min(start + WEEK, YEAR_DAYS)
    const at = start === 0 ? 0 : end === YEAR_DAYS ? YEAR_DAYS : (start + end) / 2
    weeks.push({ at, heat: mean(heatHours.slice(start, end)), cool: mean(coolHours.slice(start, end)) })
  }
  return weeks
}

function mean(values: number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length
}

function monthStarts(from: Day): YearMarks['months'] {
  const starts: YearMarks['months'] = []
  for (let at = 0; at < YEAR_DAYS; at++) {
    const day = addDays(from, at)
    if (!day.endsWith('-01')) continue
    const { month, year } = dayParts(day)
    starts.push({ at, name: month.slice(0, 3), year: month === 'January' ? year : null })
  }
  return starts
}

/** The hours of each calendar month, for the table beside the drawing. */
export function monthHours(year: SystemYear): { month: string; heat: number; cool: number }[] {
  const months = new Map<string, { month: string; heat: number; cool: number }>()
  for (let at = 0; at < YEAR_DAYS; at++) {
    const day = addDays(year.from, at)
    const { month, year: calendarYear } = dayParts(day)
    const row = months.get(day.slice(0, 7)) ?? { month: `${month} ${calendarYear}`, heat: 0, cool: 0 }
    row.heat += year.heatHours[at] ?? 0
    row.cool += year.coolHours[at] ?? 0
    months.set(day.slice(0, 7), row)
  }
  return [...months.values()]
}
