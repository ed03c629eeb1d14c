import { addMonths, type Day, dayNumber, dayText } from './day'
import { historyOf } from './history'
import type { Household } from './household'
import { plannedSystems, planParts } from './plan'
import type { SystemYear } from './plan-types'
import { Profiles } from './profile'
import { changesWithin } from './supplies'
import type { Tables } from './tables'

const DAYS = 365
// So much of the past stands in the drawing that today is not at its edge.
const MONTHS_BACK = 2

/** One year of each system, from the first of the month two months before `on`: hours, filter changes and service windows. */
export function systemYears(home: Household, tables: Tables, on: Day): SystemYear[] {
  const today = dayNumber(on)
  const from = dayNumber(`${addMonths(on, -MONTHS_BACK).slice(0, 7)}-01`)
  const end = from + DAYS - 1
  const profiles = new Profiles(tables.figures)
  const history = historyOf(home)
  const systems = plannedSystems(home, history, tables, today, profiles)
  const { plan, bought } = planParts(home, tables, today, profiles)
  const isShown = (day: number) => day >= from && day <= end

  return home.systems.map((system) => {
    const { days } = systems.get(system.id) as NonNullable<ReturnType<typeof systems.get>>
    const hours = Array.from({ length: DAYS }, (_, i) => days.hoursOn(from + i))
    const filters = days.path.filters.map((f) => {
      const { changes, looks } = history.filter(f.filter.id)
      const item = plan.items.find((i) => i.subject === f.filter.id && i.task.endsWith('-filter'))
      const task = item?.task ?? 'change-filter'
      const forecast =
        f.filter.medium === 'screen' || f.filter.medium === 'washable' ? item && [dayNumber(item.due)] : undefined
      const next =
        forecast ?? bought.filter((b) => b.f.filter.id === f.filter.id).flatMap((b) => changesWithin(b, today, 12))
      return {
        filter: f.filter.id,
        events: [
          ...changes.map((c) => ({ on: c.on, kind: 'changed' as const, task })),
          ...looks
            .filter((l) => !changes.some((c) => c.on === l.on))
            .map((l) => ({ on: l.on, kind: 'looked' as const, task: 'look-at-filter' as const })),
          ...next.map((day) => ({ on: day, kind: 'forecast' as const, task })),
        ]
          .filter((e) => isShown(e.on))
          .sort((a, b) => a.on - b.on)
          .map((e) => ({ ...e, on: dayText(e.on) })),
      }
    })
    return {
      system: system.id,
      name: system.name,
      from: dayText(from),
      heatHours: hours.map((h) => h.heat),
      coolHours: hours.map((h) => h.cool),
      filters,
      windows: plan.items
        .filter(
          (i) =>
            i.subject === system.id &&
            i.doer === 'technician' &&
            i.latest >= dayText(from) &&
            i.earliest <= dayText(end),
        )
        .map(({ task, subject, doer, earliest, due, latest }) => ({ task, subject, doer, earliest, due, latest })),
    }
  })
}
