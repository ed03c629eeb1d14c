import { z } from 'zod'
import { type Day, dayNumber, daysBetween } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { DOERS, type Doer } from '@/lib/core/household'
import { type Calendar, MOST_CLOSED_DAYS } from '@/lib/core/rounds'
import { oneOf, type SearchParams } from './homes-query'
import { typedDay, typedQuantity } from './quantities'

export const HORIZONS = [30, 60, 90, 180] as const

/** What a page of rounds is asked for, as it was typed: an address keeps it. */
export interface RoundsQuery {
  openDays: number
  noticeDays: number
  /** 0 is Sunday. */
  closedWeekdays: number[]
  /** Both ends are closed. */
  closed: { from: Day; to: Day }[]
  /** As it was typed, whether it can be read or not. */
  closedText: string
  building: string | null
  page: number
}

const LONGEST_CLOSED_TEXT = 2000
const notice = typedQuantity({ min: 0, max: 60, unit: 'days', whole: true })

/** What an address asks of the rounds, and what of it cannot be read: that is left out and said. */
export function parseRoundsQuery(params: SearchParams): { query: RoundsQuery; faults: Fault[] } {
  const faults: Fault[] = []
  const noticeDays = notice.safeParse(oneOf(params, 'notice') ?? '0')
  if (!noticeDays.success) faults.push({ path: 'notice', say: noticeDays.error.issues[0]?.message ?? '' })
  const asked = [params.off ?? []].flat()
  let closedWeekdays = [0, 1, 2, 3, 4, 5, 6].filter((weekday) => asked.includes(String(weekday)))
  if (closedWeekdays.length === 7) {
    faults.push({ path: 'off', say: 'Leave at least one weekday open: nobody could ever come.' })
    closedWeekdays = []
  }
  const typed = typeof params.closed === 'string' ? params.closed : ''
  const closedText = typed.slice(0, LONGEST_CLOSED_TEXT)
  const closed =
    typed.length > LONGEST_CLOSED_TEXT
      ? `Write the closed days in ${LONGEST_CLOSED_TEXT} signs at most: days that follow each other as one span.`
      : readClosed(closedText)
  if (typeof closed === 'string') faults.push({ path: 'closed', say: closed })
  const page = Number(oneOf(params, 'page') ?? 1)
  return {
    query: {
      openDays: HORIZONS.find((days) => days === Number(oneOf(params, 'days'))) ?? 60,
      noticeDays: noticeDays.success ? noticeDays.data : 0,
      closedWeekdays,
      closed: typeof closed === 'string' ? [] : closed,
      closedText,
      building: oneOf(params, 'building') ?? null,
      page: Number.isInteger(page) && page > 0 && page < 1_000_000 ? page : 1,
    },
    faults,
  }
}

// `2026-12-24 to 2026-12-26, 2027-01-01`, parted by commas, semicolons or line ends.
function readClosed(text: string): { from: Day; to: Day }[] | string {
  const closed: { from: Day; to: Day }[] = []
  let days = 0
  for (const part of text.split(/[,;\n]/).map((each) => each.trim())) {
    if (part === '') continue
    const [first = '', last = first, ...rest] = part.length > 60 ? [] : part.split(/\s+to\s+/i)
    const from = typedDay.safeParse(first)
    const to = typedDay.safeParse(last)
    if (!from.success || !to.success || rest.length > 0 || to.data < from.data)
      return `Write closed days like 2026-12-24, or 2026-12-24 to 2026-12-26, with commas between them. “${part.slice(0, 60)}” cannot be read.`
    days += daysBetween(from.data, to.data) + 1
    closed.push({ from: from.data, to: to.data })
  }
  return days > MOST_CLOSED_DAYS ? `These are more than ${MOST_CLOSED_DAYS} closed days. Leave more days open.` : closed
}

/** The calendar of a query. */
export function calendarOf({ noticeDays, closedWeekdays, closed }: RoundsQuery): Calendar {
  const spans = closed.map(({ from, to }) => ({ from: dayNumber(from), to: dayNumber(to) }))
  // Day 0, 1970-01-01, was a Thursday.
  const weekday = (day: number) => (((day + 4) % 7) + 7) % 7
  return {
    noticeDays,
    isClosed: (day) => closedWeekdays.includes(weekday(day)) || spans.some(({ from, to }) => from <= day && day <= to),
  }
}

/** The address of a query, which `parseRoundsQuery` reads back. */
export function roundsAddress({
  openDays,
  noticeDays,
  closedWeekdays,
  closedText,
  building,
  page,
}: RoundsQuery): string {
  const parts = new URLSearchParams()
  if (openDays !== 60) parts.set('days', String(openDays))
  if (noticeDays !== 0) parts.set('notice', String(noticeDays))
  for (const weekday of closedWeekdays) parts.append('off', String(weekday))
  if (closedText.trim() !== '') parts.set('closed', closedText)
  if (building !== null) parts.set('building', building)
  if (page > 1) parts.set('page', String(page))
  const text = parts.toString()
  return text === '' ? '/rounds' : `/rounds?${text}`
}

/** One walk: a building's let homes, or one home that stands alone, by one kind of doer on one day. */
export type WalkQuery = { doer: Doer; on: Day } & ({ building: string } | { home: string })

/** The walk that an address means, or null for none. */
export function parseWalkQuery(params: SearchParams): WalkQuery | null {
  const parsed = z.object({ doer: z.enum(DOERS), on: typedDay }).safeParse({
    doer: oneOf(params, 'doer'),
    on: oneOf(params, 'on') ?? '',
  })
  const building = oneOf(params, 'building')
  const home = oneOf(params, 'home')
  if (!parsed.success) return null
  if (building !== undefined) return { ...parsed.data, building }
  return home === undefined ? null : { ...parsed.data, home }
}

export function walkAddress(walk: WalkQuery): string {
  return `/rounds/walk?${new URLSearchParams({ ...walk })}`
}
