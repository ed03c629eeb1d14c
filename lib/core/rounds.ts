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

/**
 * The fewest visit days on which every item can be done inside its window (model, section 7), each then moved to the
 * day nearest the due days that its items allow. Nothing is visited before `on`; what is past its window is done on it.
 */
export function fewestVisits<T extends Visitable>(items: readonly T[], on: DayNumber): Visit<T>[] {
  // The item whose window closes first decides the next visit, and takes along all whose windows hold that day.
  let open = items.map((item) => ({ item, ...windowFrom(item, on) })).sort((a, b) => a.to - b.to)
  const visits: Visit<T>[] = []
  while (open.length > 0) {
    const day = (open[0] as { to: DayNumber }).to
    const taken = open.filter((o) => o.from <= day)
    open = open.filter((o) => o.from > day)
    const from = Math.max(...taken.map((o) => o.from))
    visits.push({
      on: nearestDue(
        taken.map((o) => o.item.due),
        from,
        day,
      ),
      items: taken.map((o) => o.item),
    })
  }
  return visits
}

function windowFrom(item: Visitable, on: DayNumber): { from: DayNumber; to: DayNumber } {
  return item.latest < on ? { from: on, to: on } : { from: Math.max(item.earliest, on), to: item.latest }
}

/** The earliest day of an interval whose distances to the due days sum to the least: their lower median, kept inside. */
function nearestDue(dues: DayNumber[], from: DayNumber, to: DayNumber): DayNumber {
  const sorted = dues.toSorted((a, b) => a - b)
  const median = sorted[(sorted.length - 1) >> 1] as DayNumber
  return Math.min(to, Math.max(from, median))
}

interface RoundItem extends Visitable {
  household: string
  task: Task
  subject: string
}

/** Visit days per building and doer, over what may be done within two months of `on`. Only let homes of one building share a visit. */
export function roundsOf(
  planned: readonly { home: Household; plan: HouseholdPlan; on: DayNumber }[],
  figures: Figures,
): Round[] {
  const groups = new Map<string, { building: string; doer: Doer; on: DayNumber; items: RoundItem[] }>()
  for (const { home, plan, on } of planned) {
    for (const item of plan.items) {
      const earliest = dayNumber(item.earliest)
      if (earliest > on + figures.roundsOpenDays.value) continue
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
  return [...groups.values()]
    .flatMap(({ building, doer, on, items }) =>
      fewestVisits(items, on).map((visit) => ({
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
}

function byText(a: { household: string; task: string; subject: string }, b: typeof a): number {
  return compareText(a.household, b.household) || compareText(a.task, b.task) || compareText(a.subject, b.subject)
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
