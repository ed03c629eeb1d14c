import { priorBelief } from './belief'
import { type Day, dayNumber } from './day'
import { systemLooks } from './filter'
import { type BeliefStep, beliefSteps, type FilterStory, filterStory, worthOf } from './filter-story'
import { historyOf } from './history'
import type { Household, System } from './household'
import type { LookWorth } from './look-worth'
import { type MonthHours, monthHours } from './month-hours'
import type { Item } from './plan-types'
import { startOf } from './pooling'
import { Profiles } from './profile'
import { systemDays } from './system-days'
import type { Tables } from './tables'

/** What happened to one system, told by its hours and its filters. */
export interface SystemStory {
  system: System
  months: MonthHours[]
  /** How the dust factor was learned; null where none of its filters has a loading model. */
  steps: BeliefStep[] | null
  filters: FilterStory[]
}

/** What happened to one system of a household up to a day; null where it has no such system. */
export function systemStory(home: Household, systemId: string, tables: Tables, on: Day): SystemStory | null {
  const system = home.systems.find(({ id }) => id === systemId)
  if (!system) return null
  const { day, days, history, steps } = learned(home, system, { tables, on, profiles: new Profiles(tables.figures) })
  const { belief } = steps.at(-1) as BeliefStep
  const hasModel = days.path.filters.some((f) => f.loading !== null)
  return {
    system,
    months: monthHours(days, home.readings, on),
    steps: hasModel ? steps : null,
    filters: days.path.filters.map((f) =>
      filterStory({ f, days, history: history.filter(f.filter.id), belief, on: day }, tables),
    ),
  }
}

/**
 * What a look would teach, by the filter's id: today, or on the look day of the filter's item where that is still to
 * come. Nothing for a filter where it would teach nothing.
 */
export function looksWorth(
  home: Household,
  tables: Tables,
  on: Day,
  items: readonly Pick<Item, 'subject' | 'lookOn'>[] = [],
): Map<string, LookWorth> {
  const found = new Map<string, LookWorth>()
  const profiles = new Profiles(tables.figures)
  for (const system of home.systems) {
    const { day, days, history, steps } = learned(home, system, { tables, on, profiles })
    const { belief } = steps.at(-1) as BeliefStep
    for (const f of days.path.filters) {
      const { lookOn } = items.find(({ subject, lookOn }) => subject === f.filter.id && lookOn !== undefined) ?? {}
      const at = lookOn === undefined ? day : Math.max(day, dayNumber(lookOn))
      const worth = worthOf({ f, days, history: history.filter(f.filter.id), belief, on: at }, tables)
      if (worth) found.set(f.filter.id, worth)
    }
  }
  return found
}

function learned(
  home: Household,
  system: System,
  { tables, on, profiles }: { tables: Tables; on: Day; profiles: Profiles },
) {
  const day = dayNumber(on)
  const history = historyOf(home)
  const days = systemDays(home, system, day, tables, profiles)
  const looks = systemLooks(days, history.filter, day, tables)
  const steps = beliefSteps(priorBelief(startOf(system.dustStart, tables.figures)), looks, tables)
  return { day, days, history, steps }
}
