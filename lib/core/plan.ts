import { airThroughCfm, cleanPressureDropInWg, faceVelocityFpm } from './air-path'
import { type Day, type DayNumber, dayNumber } from './day'
import { deviceTasks } from './device-tasks'
import { type Due, itemOf } from './due'
import { dustConcentration } from './dust'
import { forecastFilter, loadedFraction, systemTheta } from './filter'
import { filterItem, velocityWarning } from './filter-item'
import { type History, historyOf } from './history'
import type { Household, System } from './household'
import type { Theta } from './learning'
import type { HouseholdPlan, Item, Plan, Supply, Warning, Workings } from './plan-types'
import { Profiles } from './profile'
import { roundsOf } from './rounds'
import { condensateLook, humidifierPad, outdoorUnitClear } from './season-tasks'
import { addSupply, type Bought, bySize, changesWithin, isBought } from './supplies'
import { type SystemDays, systemDays } from './system-days'
import type { Tables } from './tables'
import { assumptions } from './warnings'
import { yearlyService } from './yearly-service'

/**
 * The plan of several households on one day, or each on its own (`on` as a function): the only function that makes
 * one. Pure: it knows no clock and no store. Order of the households does not change anybody's dates.
 */
export function plan(homes: readonly Household[], tables: Tables, on: Day | ((home: Household) => Day)): Plan {
  const profiles = new Profiles(tables.figures)
  const planned = homes.map((home) => {
    const day = dayNumber(typeof on === 'string' ? on : on(home))
    return { home, on: day, ...planParts(home, tables, day, profiles) }
  })
  const first = homes[0]
  return {
    on: typeof on === 'string' ? on : first ? on(first) : '',
    households: planned.map((p) => p.plan),
    supplies: suppliesOf(planned, tables, tables.figures.suppliesMonths.value),
    rounds: roundsOf(planned, tables.figures),
  }
}

/** One household's plan alone; `profiles` may be shared between calls with the same tables. */
export function planHousehold(
  home: Household,
  tables: Tables,
  on: Day,
  profiles = new Profiles(tables.figures),
): HouseholdPlan {
  return planParts(home, tables, dayNumber(on), profiles).plan
}

/** A system with everything that its filters and tasks are reckoned from. */
export interface PlannedSystem {
  days: SystemDays
  theta: Theta
}

/** The systems of a household, reckoned once for all that is asked of them. */
export function plannedSystems(
  home: Household,
  history: History,
  tables: Tables,
  on: DayNumber,
  profiles: Profiles,
): Map<string, PlannedSystem> {
  const planned = new Map<string, PlannedSystem>()
  for (const system of home.systems) {
    const days = systemDays(home, system, on, tables, profiles)
    planned.set(system.id, { days, theta: systemTheta(days, history.filter, on, tables) })
  }
  return planned
}

/** Filters to buy within so many months, by size, medium and rating. */
export function suppliesOf(
  planned: readonly { on: DayNumber; bought: Bought[] }[],
  tables: Tables,
  months: number,
): Supply[] {
  const supplies = new Map<string, Supply>()
  for (const { on, bought } of planned) {
    for (const b of bought)
      addSupply(supplies, b, changesWithin(b, on, months).length, tables.figures.assumedMerv.value)
  }
  return [...supplies.values()].sort(bySize)
}

/** A household's plan with what its supplies are counted from. */
export function planParts(
  home: Household,
  tables: Tables,
  on: DayNumber,
  profiles: Profiles,
): { plan: HouseholdPlan; bought: Bought[] } {
  const history = historyOf(home)
  const since = home.since === undefined ? on : dayNumber(home.since)
  const systems = plannedSystems(home, history, tables, on, profiles)
  const items: Item[] = []
  const workings: Workings[] = []
  const warnings: Warning[] = assumptions(home, systems, tables)
  const bought: Bought[] = []

  const dust = dustConcentration(home, tables)
  for (const { days, theta } of systems.values()) {
    const { heat, cool, blower } = days.profile.totals
    for (const f of days.path.filters) {
      const grams = days.gramsThrough(f)
      const forecast = forecastFilter(
        { f, days, grams, theta, history: history.filter(f.filter.id), since },
        tables.figures,
      )
      place(items, filterItem({ f, days, theta, forecast, on }, tables))
      workings.push({
        filter: f.filter.id,
        heatHours: heat,
        coolHours: cool,
        fanHours: blower,
        airflowCfm: airThroughCfm(f, days.airflow),
        faceVelocityFpm: faceVelocityFpm(f, days.airflow),
        dustMicrogramsPerM3: dust,
        arrestance: f.loading?.arrestance ?? null,
        capacityGrams: f.loading?.capacityGrams ?? null,
        pressureDropCleanInWg: cleanPressureDropInWg(f, days.airflow),
        loadedFraction: loadedFraction(f, grams, theta, forecast.changedOn, on),
        theta: f.loading === null ? null : theta,
      })
      const small = velocityWarning({ f, days, units: home.units }, tables)
      if (small) warnings.push(small)
      if (isBought(f)) bought.push({ f, days, theta, due: forecast.due })
    }
  }
  for (const due of systemDues({ home, systems, history, since, on }, tables))
    place(items, itemOf(due, on, tables.figures))
  for (const device of home.devices) {
    const { dues, warnings: unknown } = deviceTasks(device, history, since, tables)
    for (const due of dues) place(items, itemOf(due, on, tables.figures))
    warnings.push(...unknown)
  }
  return { plan: { id: home.id, items, workings, warnings }, bought }
}

/** Puts an item where it belongs in a list by day: a home has a handful, too few for a general sort to be worth its start. */
function place(items: Item[], item: Item): void {
  let i = items.push(item) - 1
  for (; i > 0 && byDueDay(items[i - 1] as Item, item) > 0; i--) items[i] = items[i - 1] as Item
  items[i] = item
}

function byDueDay(a: Item, b: Item): number {
  // Most differ by the day.
  if (a.due !== b.due) return a.due < b.due ? -1 : 1
  return compare(a.task, b.task) || compare(a.subject, b.subject)
}

function systemDues(
  facts: {
    home: Household
    systems: Map<string, PlannedSystem>
    history: History
    since: DayNumber
    on: DayNumber
  },
  tables: Tables,
): Due[] {
  const { home, systems, history, since, on } = facts
  const dues: Due[] = []
  const add = (due: Due | null) => due && dues.push(due)
  for (const system of home.systems) {
    const { days } = systems.get(system.id) as PlannedSystem
    for (const [task, kind] of yearlyTasks(system)) {
      add(yearlyService({ task, kind, days, last: history.lastDone(task, system.id), since, on }, tables))
    }
    const kinds = outdoorSeasons(system)
    if (kinds.length > 0) {
      add(
        outdoorUnitClear(
          { days, subject: system.id, last: history.lastDone('outdoor-unit-clear', system.id), since, on, kinds },
          tables,
        ),
      )
    }
  }
  for (const device of home.devices) {
    const served = (has: (s: System) => boolean) => systems.get(device.system ?? home.systems.find(has)?.id ?? '')?.days
    if (device.kind === 'condensate-drain') {
      const days = served((s) => s.cool !== undefined)
      if (days)
        add(
          condensateLook(
            { days, subject: device.id, last: history.lastDone('condensate-look', device.id), since, on },
            tables,
          ),
        )
    } else if (device.kind === 'humidifier') {
      const days = served((s) => s.heat !== undefined)
      if (days)
        add(
          humidifierPad(
            {
              days,
              subject: device.id,
              last: history.lastDone('humidifier-pad', device.id),
              since,
              on,
              hardWater: home.hardWater,
            },
            tables,
          ),
        )
    }
  }
  return dues
}

const BOILERS = new Set(['gas-boiler', 'propane-boiler', 'oil-boiler', 'electric-boiler'])

/** The yearly services of a system; what pumps heat both ways gets both. */
function yearlyTasks(
  system: System,
): ['heating-service' | 'boiler-service' | 'cooling-service', 'heating' | 'cooling'][] {
  const tasks: ReturnType<typeof yearlyTasks> = []
  const { heat, cool } = system
  const pumps = cool?.source === 'heat-pump' || heat?.source === 'heat-pump' || heat?.source === 'dual-fuel'
  if (heat && BOILERS.has(heat.source)) tasks.push(['boiler-service', 'heating'])
  else if (heat || pumps) tasks.push(['heating-service', 'heating'])
  if ((cool && !isWindowUnit(system)) || pumps) tasks.push(['cooling-service', 'cooling'])
  return tasks
}

/** What cools the one room it stands in is a window air conditioner: nobody services it, and it has no unit outside to clear. */
function isWindowUnit({ delivery, heat, cool }: System): boolean {
  const pumpsHeat = heat?.source === 'heat-pump' || heat?.source === 'dual-fuel'
  return delivery === 'room' && cool?.source === 'central-ac' && !pumpsHeat
}

/** The seasons in which a system's outdoor unit runs. */
function outdoorSeasons(system: System): ('heating' | 'cooling')[] {
  const { heat, cool } = system
  const pumpsHeat = heat?.source === 'heat-pump' || heat?.source === 'dual-fuel'
  return [
    ...(cool && !isWindowUnit(system) ? (['cooling'] as const) : []),
    ...(pumpsHeat ? (['heating'] as const) : []),
  ]
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
