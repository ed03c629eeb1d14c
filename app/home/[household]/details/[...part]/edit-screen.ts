import type { ClimateChoices } from '@/app/describe/fields/place-fields'
import { climateChoices, DESCRIBE_TABLES } from '@/app/describe/tables'
import { plural } from '@/lib/core/day-words'
import type { Delivery, DeviceKind, FilterPlace, Household } from '@/lib/core/household'
import { subjectInWords, systemChoices } from '@/lib/core/subject-words'
import type { Typed } from '@/lib/forms/describe/answers'
import { alarmRows, devicesTyped, MOST_ALARMS, tickable } from '@/lib/forms/describe/devices'
import { filterTyped, placesFor } from '@/lib/forms/describe/filter'
import { peopleTyped } from '@/lib/forms/describe/people'
import { placeTyped } from '@/lib/forms/describe/place'
import { systemTyped } from '@/lib/forms/describe/system'

type Systems = { id: string; name: string }[]

/** What one part's page is drawn from. */
export type EditScreen = {
  title: string
  typed: Typed
  /** What taking it out does to what was recorded; null where it cannot be taken out. */
  removal: string | null
} & (
  | { kind: 'climate'; climates: ClimateChoices; keepable: boolean }
  | { kind: 'people' }
  | { kind: 'systems'; units: Household['units'] }
  | { kind: 'filters'; places: FilterPlace[]; systems: Systems }
  | { kind: 'devices'; tickable: { value: string; kind: DeviceKind; label: string }[]; rows: number; mostRows: number }
)

/** The page of one part; null where there is no such part. */
export function editScreenOf(home: Household, group: string, subject: string): EditScreen | null {
  const systems = systemChoices(home)
  if (group === 'systems') return systemScreen(home, subject)
  if (group === 'filters') return filterScreen(home, subject, systems)
  if (subject !== '') return null
  const fixed = { removal: null }
  switch (group) {
    case 'climate':
      return {
        ...fixed,
        kind: 'climate',
        title: 'The home, and its weather',
        typed: placeTyped(home, DESCRIBE_TABLES),
        climates: climateChoices(),
        keepable: home.climate.kind === 'monthly',
      }
    case 'people':
      return { ...fixed, kind: 'people', title: 'Who lives there', typed: peopleTyped(home) }
    case 'devices': {
      const typed = devicesTyped(home)
      const rows = Math.max(1, alarmRows(typed)) + 1
      return {
        ...fixed,
        kind: 'devices',
        title: 'Alarms and small devices',
        typed,
        tickable: tickable(home.devices),
        rows,
        mostRows: MOST_ALARMS,
      }
    }
    default:
      return null
  }
}

function systemScreen(home: Household, subject: string): EditScreen | null {
  const base = { kind: 'systems' as const, units: home.units }
  if (subject === 'new') return { ...base, title: 'Another system', typed: { fan: ['unknown'] }, removal: null }
  const system = home.systems.find(({ id }) => id === subject)
  if (!system) return null
  const filters = home.filters.filter((filter) => filter.system === subject)
  const ids = [subject, ...filters.map(({ id }) => id)]
  const with_ =
    filters.length > 0
      ? ` Its ${plural(filters.length, 'filter')} ${filters.length === 1 ? 'goes' : 'go'} with it.`
      : ''
  return {
    ...base,
    title: system.name,
    typed: systemTyped(system, home),
    removal: `${with_} ${recordsStay(home, ids)}`.trim(),
  }
}

function filterScreen(home: Household, subject: string, systems: Systems): EditScreen | null {
  const filter = home.filters.find(({ id }) => id === subject)
  if (systems.length === 0 || (subject !== 'new' && !filter)) return null
  const deliveries = new Set<Delivery>(
    home.systems.filter(({ id }) => !filter || filter.system === id).map(({ delivery }) => delivery),
  )
  const places = [...new Set([...deliveries].flatMap(placesFor))]
  const base = { kind: 'filters' as const, places, systems: filter ? [] : systems }
  if (!filter) return { ...base, title: 'Another filter', typed: { 'size-way': ['printed'] }, removal: null }
  return {
    ...base,
    title: `Filter, ${subjectInWords(home, subject)}`,
    typed: { ...filterTyped(filter, home.assumed), system: [filter.system] },
    removal: recordsStay(home, [subject]),
  }
}

function recordsStay(home: Household, ids: string[]): string {
  const count = home.records.filter((one) =>
    ids.includes(one.kind === 'service-done' ? one.subject : one.filter),
  ).length
  if (count === 0) return 'Nothing is recorded about it.'
  return `${plural(count, 'record')} about it ${count === 1 ? 'stays' : 'stay'} in the log to be read, and no longer ${count === 1 ? 'counts' : 'count'}.`
}
