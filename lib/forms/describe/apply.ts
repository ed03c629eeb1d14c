import type { Day } from '@/lib/core/day'
import type { Assumed, Household, LogRecord } from '@/lib/core/household'
import { householdRules } from '../rules/household-rules'
import { type DescribeTables, freshId, type Read, type Typed } from './answers'
import { ventilatorScreens } from './assemble'
import { readDevices } from './devices'
import { readFilter } from './filter'
import { readPeople } from './people'
import { readPlace } from './place'
import { keptAsShown, readSystem } from './system'

export const GROUPS = ['climate', 'people', 'systems', 'filters', 'devices'] as const
export type Group = (typeof GROUPS)[number]

/** Which part of a home is changed: for a system or a filter which one, `new` for one more; a filter's system where it is new. */
export interface Part {
  group: Group
  subject: string
  remove: boolean
}

/**
 * A home with one part of it as it was typed, or everything that is wrong with what was typed. Applied to whatever
 * stands when it is saved, so that somebody else's change to another part is not lost.
 */
export function applyPart(
  home: Household,
  part: Part,
  typed: Typed,
  { tables, on }: { tables: DescribeTables; on: Day },
): Read<Household> {
  const read = part.remove
    ? { ok: true as const, value: without(home, part) }
    : changed(home, part, typed, { tables, on })
  if (!read.ok) return read
  const clashes = householdRules([read.value], () => on)
  if (clashes.length === 0) return read
  return {
    ok: false,
    faults: clashes.map(({ path, say }) => ({ path: '', say: `${nameOf(read.value, path)} ${say}.` })),
  }
}

function changed(
  home: Household,
  part: Part,
  typed: Typed,
  { tables, on }: { tables: DescribeTables; on: Day },
): Read<Household> {
  const { subject } = part
  switch (part.group) {
    case 'climate':
      return mapped(readPlace(typed, tables, home), ({ assumed, ...place }) => {
        const { building: _, elevationFt: __, ...rest } = home
        return settled({ ...rest, ...place }, ['climate'], '', assumed)
      })
    case 'people':
      return mapped(readPeople(typed), ({ assumed, ...people }) => {
        const { petFactor: _, ...rest } = home
        return settled({ ...rest, ...people }, ['hard-water', 'vulnerable'], '', assumed)
      })
    case 'systems': {
      const before = home.systems.find(({ id }) => id === subject)
      return mapped(readSystem(typed, home.units, before), ({ system, assumed }) => {
        const id =
          before?.id ??
          freshId(
            system.name,
            home.systems.map((one) => one.id),
            'system',
          )
        const systems = before
          ? home.systems.map((one) => (one.id === id ? { id, ...keptAsShown(system, before, typed, home) } : one))
          : [...home.systems, { id, ...system }]
        // A file may say nothing of the fan; sent back as it stands, that is no new "don't know".
        const had = (home.assumed ?? []).some((one) => one.subject === id && one.code === 'fan')
        const isNew = (code: Assumed['code']) => code !== 'fan' || !before || before.fan !== undefined || had
        const codes = assumed.filter(isNew).map((code) => ({ code, subject: id }))
        return settled({ ...home, systems }, ['heat-source', 'cool-source', 'delivery', 'fan'], id, codes)
      })
    }
    case 'filters':
      return filterChanged(home, subject, typed, tables)
    case 'devices':
      return mapped(readDevices(typed, on, home.devices), (devices) => ({
        ...home,
        devices,
        filters: [...home.filters, ...screensOfNew(home, devices)],
      }))
  }
}

function screensOfNew(home: Household, devices: Household['devices']): Household['filters'] {
  const had = home.devices.some(({ kind }) => kind === 'erv' || kind === 'hrv')
  return had ? [] : ventilatorScreens(devices, home.systems, home.filters)
}

function filterChanged(home: Household, subject: string, typed: Typed, tables: DescribeTables): Read<Household> {
  const before = home.filters.find(({ id }) => id === subject)
  const wanted = typed.system?.[0] ?? before?.system
  const system =
    home.systems.find(({ id }) => id === wanted) ?? (home.systems.length === 1 ? home.systems[0] : undefined)
  if (!system) return { ok: false, faults: [{ path: 'system', say: 'Choose the system that the filter belongs to.' }] }
  const read = readFilter(typed, { delivery: system.delivery, common: tables.commonSizes })
  if (!read.ok) return read
  const { filter, assumed } = read.value
  if (!filter) return { ok: true, value: before ? without(home, { group: 'filters', subject, remove: true }) : home }
  const id =
    before?.id ??
    freshId(
      filter.place,
      home.filters.map((one) => one.id),
      'filter',
    )
  const next = { id, system: system.id, ...filter }
  const filters = before ? home.filters.map((one) => (one.id === id ? next : one)) : [...home.filters, next]
  const codes = assumed.map((code) => ({ code, subject: id }))
  return { ok: true, value: settled({ ...home, filters }, ['filter-place', 'filter-size', 'filter-medium'], id, codes) }
}

/** Without one system, and what belongs to it alone, or without one filter. What was recorded stays in the log. */
function without(home: Household, { group, subject }: Part): Household {
  const goes = (system: string | undefined) => group === 'systems' && system === subject
  const systems = home.systems.filter(({ id }) => !goes(id))
  const filters = home.filters.filter(({ id, system }) => !goes(system) && !(group === 'filters' && id === subject))
  const devices = home.devices.filter(({ system }) => !goes(system))
  const ids = new Set([...systems, ...filters, ...devices].map(({ id }) => id))
  return {
    ...home,
    systems,
    filters,
    devices,
    records: home.records.filter((record) => ids.has(subjectOf(record))),
    readings: home.readings.filter(({ system }) => !goes(system)),
    ...(home.assumed && { assumed: home.assumed.filter((one) => one.subject === '' || ids.has(one.subject)) }),
  }
}

function subjectOf(record: LogRecord): string {
  return record.kind === 'service-done' ? record.subject : record.filter
}

/** The home with what is now unknown about one subject instead of what was unknown before. */
function settled(home: Household, codes: Assumed['code'][], subject: string, fresh: Assumed[]): Household {
  const rest = (home.assumed ?? []).filter((one) => one.subject !== subject || !codes.includes(one.code))
  const { assumed: _, ...bare } = home
  const all = [...rest, ...fresh]
  return all.length > 0 ? { ...bare, assumed: all } : bare
}

function mapped<A, B>(read: Read<A>, map: (value: A) => B): Read<B> {
  return read.ok ? { ok: true, value: map(read.value) } : read
}

/** `households[0].filters[1].place`: the name of what is meant. */
function nameOf(home: Household, path: string): string {
  const [, list, index] = /^households\[0\]\.(\w+)\[(\d+)\]/.exec(path) ?? []
  const at = Number(index ?? 0)
  if (list === 'filters') return `The filter “${home.filters[at]?.id ?? ''}”`
  if (list === 'systems') return `The system “${home.systems[at]?.name ?? ''}”`
  if (list === 'readings') return 'This reading'
  return 'This'
}
