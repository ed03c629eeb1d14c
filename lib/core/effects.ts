import { type Day, daysBetween } from './day'
import { plural } from './day-words'
import type { DustEventKind, Household, LogRecord } from './household'
import { planHousehold } from './plan'
import type { Effect } from './plan-types'
import type { Mark, Tables } from './tables'

/** A fact of the household, and the same household with that fact alone changed. */
interface Change {
  fact: string
  instead: string
  mark: Mark
  home: Household
}

const EVENTS: Record<DustEventKind, string> = {
  renovation: 'the building work',
  smoke: 'the wildfire smoke',
  dust: 'the dust or pollen season',
}

/** What each fact does to one filter's due day: the plan made again with that fact alone changed. */
export function effects(home: Household, filter: string, tables: Tables, on: Day): Effect[] {
  const due = dueOf(home, filter, tables, on)
  return changes(home, filter, tables).map(({ home: changed, ...words }) => {
    const dueWithout = dueOf(changed, filter, tables, on)
    return { ...words, dueWithout, days: daysBetween(dueWithout, due) }
  })
}

function dueOf(home: Household, filter: string, tables: Tables, on: Day): Day {
  const isFilterTask = (task: string) => task === 'change-filter' || task === 'wash-filter'
  const item = planHousehold(home, tables, on).items.find((i) => isFilterTask(i.task) && i.subject === filter)
  if (!item) throw new Error(`no filter ${filter} in household ${home.id}`)
  return item.due
}

function changes(home: Household, filterId: string, tables: Tables): Change[] {
  const { figures } = tables
  const filter = home.filters.find((f) => f.id === filterId)
  const system = home.systems.find((s) => s.id === filter?.system)
  const found: Change[] = []
  const add = (fact: string, instead: string, mark: Mark, changed: Partial<Household>) =>
    found.push({ fact, instead, mark, home: { ...home, ...changed } })

  if (home.people !== 2)
    add(plural(home.people, 'person', 'people'), 'two people', figures.peopleEach.mark, { people: 2 })
  if (home.pets > 0 || home.petFactor !== undefined) {
    add(plural(home.pets, 'pet'), 'no pets', tables.pets[1]?.mark ?? 'P', { pets: 0, petFactor: undefined })
  }
  if (home.smoking) add('smoking indoors', 'nobody smoking indoors', figures.smoking.mark, { smoking: false })
  if (home.carpet) add('mostly carpet', 'mostly bare floors', figures.carpet.mark, { carpet: false })
  for (const kind of new Set(home.dustEvents.map((e) => e.kind))) {
    const without = home.dustEvents.filter((e) => e.kind !== kind)
    add(EVENTS[kind], 'days without it', tables.dustEvents[kind].mark, { dustEvents: without })
  }
  if (system?.fan && system.fan.mode !== 'auto') {
    const says =
      system.fan.mode === 'on' ? 'the fan left on' : `the fan for ${system.fan.minutesPerHour} minutes of every hour`
    const systems = home.systems.map((s) => (s.id === system.id ? { ...s, fan: { mode: 'auto' as const } } : s))
    add(says, 'the fan on auto', 'C', { systems })
  }
  if (home.readings.some((r) => r.system === system?.id)) {
    add('the measured hours', 'the hours the climate suggests', 'C', {
      readings: home.readings.filter((r) => r.system !== system?.id),
    })
  }
  if (home.records.some(showsLight)) {
    add('what was seen at the filters', 'never having looked', figures.thetaSigma.mark, {
      records: home.records.map(withoutLight),
    })
  }
  if (filter?.labelLimitDays !== undefined) {
    const filters = home.filters.map((f) => (f.id === filterId ? { ...f, labelLimitDays: undefined } : f))
    add('the limit printed on the filter', 'the usual limit of its kind', 'P', { filters })
  }
  return found
}

function showsLight(record: LogRecord): boolean {
  return record.kind !== 'service-done' && record.light !== undefined
}

function withoutLight(record: LogRecord): LogRecord {
  return record.kind === 'service-done' ? record : { ...record, light: undefined }
}
