import { type DayNumber, dayNumber, dayText } from './day'
import type { Doer, Household, Task } from './household'
import type { HouseholdPlan, Round } from './plan-types'
import type { Figures } from './tables'

/** Something to be done on one day of a window, wished for on its due day. */
export interface Visitable {
  earliest: DayNumber
  due: DayNumber
  latest: DayNumber
}

export interface Visit<T> {
  on: DayNumber
  items: T[]
}

/** When a round may be walked at all, beside the windows of what is done on it. */
export interface Calendar {
  /** Days when nobody can come. */
  isClosed?: (day: DayNumber) => boolean
  /** Whole days between telling the tenants and coming: 2 means the day after tomorrow at the soonest. */
  noticeDays?: number
}

/** Days that may be closed beside the weekdays that always are. */
export const MOST_CLOSED_DAYS = 366

// With one weekday open and as many of those closed, the next is open. Without a limit it would be searched for ever.
const LONGEST_CLOSURE_DAYS = 7 * (MOST_CLOSED_DAYS + 1)

/**
 * The fewest visit days on which every item can be done inside its window (model, section 7), each then moved to the
 * day nearest the due days that its items allow. Nothing is visited before `on` and the notice after it, nor on a
 * closed day; what has no day left in its window is done on the first open day after it. Throws a RangeError where no
 * day is open for seven years.
 */
export function fewestVisits<T extends Visitable>(
  items: readonly T[],
  on: DayNumber,
  { isClosed = () => false, noticeDays = 0 }: Calendar = {},
): Visit<T>[] {
  const start = on + noticeDays
  // The item whose window closes first decides the next visit, and takes along all whose windows hold that day.
  let open = items.map((item) => ({ item, ...windowFrom(item, start, isClosed) })).sort((a, b) => a.to - b.to)
  const visits: Visit<T>[] = []
  while (open.length > 0) {
    const day = (open[0] as { to: DayNumber }).to
    const taken = open.filter((o) => o.from <= day)
    open = open.filter((o) => o.from > day)
    const from = Math.max(...taken.map((o) => o.from))
    visits.push({
      on: nearestDue(
        taken.map((o) => o.item.due),
        { from, to: day, isClosed },
      ),
      items: taken.map((o) => o.item),
    })
  }
  return visits
}

type IsClosed = (day: DayNumber) => boolean

/** The first and the last open day of an item; both the same where it is too late for its window. */
function windowFrom(item: Visitable, start: DayNumber, isClosed: IsClosed): { from: DayNumber; to: DayNumber } {
  const from = firstOpen(Math.max(item.earliest, start), isClosed)
  let to = item.latest
  while (to > from && isClosed(to)) to--
  return { from, to: Math.max(from, to) }
}

function firstOpen(from: DayNumber, isClosed: IsClosed): DayNumber {
  for (let day = from; day <= from + LONGEST_CLOSURE_DAYS; day++) if (!isClosed(day)) return day
  throw new RangeError(`no open day within ${LONGEST_CLOSURE_DAYS} days of ${dayText(from)}`)
}

/**
 * The earliest open day of an interval, whose ends are open, whose distances to the due days sum to the least. The sum
 * falls up to the lower median and rises after the upper, so that the open days beside the lower median are enough.
 */
function nearestDue(
  dues: DayNumber[],
  { from, to, isClosed }: { from: DayNumber; to: DayNumber; isClosed: IsClosed },
): DayNumber {
  const sorted = dues.toSorted((a, b) => a - b)
  const median = sorted[(sorted.length - 1) >> 1] as DayNumber
  let after = Math.min(to, Math.max(from, median))
  let before = after
  while (isClosed(after)) after++
  while (isClosed(before)) before--
  const distance = (day: DayNumber) => dues.reduce((sum, due) => sum + Math.abs(due - day), 0)
  return distance(before) <= distance(after) ? before : after
}

interface RoundItem extends Visitable {
  household: string
  task: Task
  subject: string
}

/** What a round needs to know of a home. */
export type RoundHome = Pick<Household, 'id' | 'name' | 'building' | 'tenure'>

export interface RoundsOptions extends Calendar {
  /** What may be done within so many days is taken in. */
  openDays: number
}

/** Rounds, and how many days it would take to do each of their items on its due day. */
export interface Rounds {
  rounds: Round[]
  daysIfEachOnItsDue: number
}

/** Visit days per building and doer, over what may be done within some days of `on`. Only let homes of one building share a visit. */
export function planRounds(
  planned: readonly { home: RoundHome; plan: Pick<HouseholdPlan, 'items'>; on: DayNumber }[],
  { openDays, ...calendar }: RoundsOptions,
): Rounds {
  const groups = new Map<string, { building: string; doer: Doer; on: DayNumber; items: RoundItem[] }>()
  for (const { home, plan, on } of planned) {
    for (const item of plan.items) {
      const earliest = dayNumber(item.earliest)
      if (earliest > on + openDays) continue
      const isShared = home.tenure === 'let' && home.building !== undefined
      const key = `${isShared ? `building ${home.building}` : `home ${home.id}`} ${item.doer}`
      let group = groups.get(key)
      if (!group) {
        group = { building: home.building ?? home.name, doer: item.doer, on, items: [] }
        groups.set(key, group)
      }
      group.items.push({
        household: home.id,
        task: item.task,
        subject: item.subject,
        earliest,
        due: dayNumber(item.due),
        latest: dayNumber(item.latest),
      })
    }
  }
  const all = [...groups.values()]
  const rounds = all
    .flatMap(({ building, doer, on, items }) =>
      fewestVisits(items, on, calendar).map((visit) => ({
        building,
        doer,
        on: dayText(visit.on),
        items: visit.items.map(({ household, task, subject }) => ({ household, task, subject })).sort(byText),
      })),
    )
    .sort(
      (a, b) =>
        compareText(a.on, b.on) ||
        compareText(a.building, b.building) ||
        compareText(a.doer, b.doer) ||
        // Homes that stand alone may have one name.
        compareText(a.items[0]?.household ?? '', b.items[0]?.household ?? ''),
    )
  return { rounds, daysIfEachOnItsDue: all.reduce((sum, group) => sum + dueDays(group), 0) }
}

/** The rounds that belong to a plan: every day open, no notice. */
export function roundsOf(
  planned: readonly { home: Household; plan: HouseholdPlan; on: DayNumber }[],
  figures: Figures,
): Round[] {
  return planRounds(planned, { openDays: figures.roundsOpenDays.value }).rounds
}

// What is due already would be done today.
function dueDays({ on, items }: { on: DayNumber; items: RoundItem[] }): number {
  return new Set(items.map(({ due }) => Math.max(due, on))).size
}

function byText(a: { household: string; task: string; subject: string }, b: typeof a): number {
  return compareText(a.household, b.household) || compareText(a.task, b.task) || compareText(a.subject, b.subject)
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
